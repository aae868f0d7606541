import type { FactOf } from '../care/catalogue.ts';
import type { Home } from '../care/home.ts';
import type { FactId, PersonId } from '../care/ids.ts';
import type { Symptom } from '../care/outbreaks/facts.ts';
import { wholeHomeAsked } from '../care/outbreaks/whole-home.ts';
import { allow, refuse } from '../care/refusal.ts';
import { ranks } from '../care/staff/rights.ts';
import type { Day } from '../care/time.ts';
import type { Doing, Outcome } from './doing.ts';
import { today } from './doing.ts';
import { wrongDay, wrongText } from './wrong-entry.ts';

/** Somebody moved in, or came back. Starts the rule for returns or admissions. */
export function personCame(
  home: Home,
  came: {
    readonly person: PersonId;
    readonly on: Day;
    readonly from: FactOf<'person.came'>['data']['from'];
  },
  doing: Doing,
): Outcome {
  const wrong = wrongDay(came.on, { field: 'on', notAfter: today(home, doing) });
  if (wrong !== undefined) return refuse(wrong);
  return allow([{ kind: 'person.came', data: came }]);
}

export function personWent(
  home: Home,
  went: {
    readonly person: PersonId;
    readonly on: Day;
    readonly to: FactOf<'person.went'>['data']['to'];
  },
  doing: Doing,
): Outcome {
  const wrong = wrongDay(went.on, { field: 'on', notAfter: today(home, doing) });
  if (wrong !== undefined) return refuse(wrong);
  return allow([{ kind: 'person.went', data: went }]);
}

export function noticeSymptoms(
  home: Home,
  seen: {
    readonly person: PersonId;
    readonly on: Day;
    readonly signs: readonly Symptom[];
    readonly note: string;
  },
  doing: Doing,
): Outcome {
  const wrong = wrongDay(seen.on, { field: 'on', notAfter: today(home, doing) });
  if (wrong !== undefined) return refuse(wrong);
  if (seen.note.trim().length > 500)
    return refuse({ reason: 'too-long', field: 'note', most: 500 });
  if (seen.signs.length === 0 && seen.note.trim() === '')
    return refuse({ reason: 'empty', field: 'signs' });
  const { person, on } = seen;
  return allow([
    {
      kind: 'symptoms.noticed',
      data: { person, on, signs: [...seen.signs] },
      private: { note: seen.note.trim() },
    },
  ]);
}

export function noteContact(
  home: Home,
  contact: {
    readonly person: PersonId;
    readonly on: Day;
    readonly source?: PersonId;
    readonly note: string;
  },
  doing: Doing,
): Outcome {
  const wrong = wrongDay(contact.on, { field: 'on', notAfter: today(home, doing) });
  if (wrong !== undefined) return refuse(wrong);
  if (contact.note.trim().length > 500)
    return refuse({ reason: 'too-long', field: 'note', most: 500 });
  const { note, ...data } = contact;
  return allow([{ kind: 'contact.noted', data, private: { note: note.trim() } }]);
}

/** A senior says that the whole home is tested, counting from this day, and who asked for it. */
export function testWholeHome(
  home: Home,
  { on, askedBy }: { readonly on: Day; readonly askedBy: string },
  doing: Doing,
): Outcome {
  if (!ranks(home, doing.by, 'senior')) return refuse({ reason: 'needs-senior' });
  const wrong =
    wrongDay(on, { field: 'on' }) ?? wrongText(askedBy, { field: 'askedBy', most: 500 });
  if (wrong !== undefined) return refuse(wrong);
  return allow([{ kind: 'home.tested-on', data: { on }, private: { askedBy: askedBy.trim() } }]);
}

/** A senior takes back that the whole home is tested. Other reasons to test somebody stay. */
export function callOffWholeHome(
  home: Home,
  { asked, reason }: { readonly asked: FactId; readonly reason: string },
  doing: Doing,
): Outcome {
  if (!ranks(home, doing.by, 'senior')) return refuse({ reason: 'needs-senior' });
  if (!wholeHomeAsked(home).some(({ id }) => id === asked))
    return refuse({ reason: 'nothing-changed' });
  const wrong = wrongText(reason, { field: 'reason', most: 500 });
  if (wrong !== undefined) return refuse(wrong);
  return allow([
    {
      kind: 'home.called-off',
      data: { replaces: [asked] },
      private: { reason: reason.trim() },
    },
  ]);
}
