import type { DataOf } from '../care/catalogue.ts';
import type { Home } from '../care/home.ts';
import type { FactId, PersonId, TestId, TurnId } from '../care/ids.ts';
import type { Mood } from '../care/practice/facts.ts';
import { allow, refuse } from '../care/refusal.ts';
import { letterFor } from '../care/results/letter.ts';
import { ranks } from '../care/staff/rights.ts';
import type { Reader } from '../care/support/facts.ts';
import { proposalFor } from '../care/support/proposal.ts';
import { standingFor } from './describe.ts';
import type { Doing, Outcome } from './doing.ts';
import { writePlan } from './record-consent.ts';

/** How it went for the person, on the common scale and on their own. */
export function noteAfter(given: {
  readonly person: PersonId;
  readonly turn?: TurnId;
  readonly mood: Mood;
  readonly own?: number;
  readonly helped: string;
  readonly upset: string;
}): Outcome {
  const { helped, upset, ...data } = given;
  for (const [field, text] of [
    ['helped', helped],
    ['upset', upset],
  ] as const) {
    if (text.length > 500) return refuse({ reason: 'too-long', field, most: 500 });
  }
  const hidden = { helped: helped.trim().normalize('NFC'), upset: upset.trim().normalize('NFC') };
  return allow([{ kind: 'after.noted', data, private: hidden }]);
}

/** Somebody read what the plan could say next, and took it over or left the plan as it is. */
export function answerProposal(
  home: Home,
  given: { readonly person: PersonId; readonly after: FactId; readonly accept: boolean },
): Outcome {
  const proposal = proposalFor(home, given.person);
  if (proposal === undefined || proposal.after.id !== given.after)
    return refuse({ reason: 'nothing-changed' });
  const { person, after, accept } = given;
  const changes = accept ? proposal.changes : [];
  const written = writePlan(home, {
    person,
    fields: Object.fromEntries(changes.map(({ field, to }) => [field, to])),
  });
  if (!written.ok) return written;
  const accepted = changes.map(({ field }) => field);
  return allow([...written.value, { kind: 'after.answered', data: { person, after, accepted } }]);
}

/** Whether somebody is told this person's results, and on whose word. */
export function agreeSharing(
  home: Home,
  given: Omit<DataOf<'sharing.agreed'>, 'replaces'> & { readonly name: string },
  doing: Doing,
): Outcome {
  if (!ranks(home, doing.by, 'senior')) return refuse({ reason: 'needs-senior' });
  const { name, ...data } = given;
  if (name.trim() === '') return refuse({ reason: 'empty', field: 'name' });
  if (name.length > 500) return refuse({ reason: 'too-long', field: 'name', most: 500 });
  const old = standingFor(home, ['person', given.person], {
    kind: 'sharing.agreed',
    where: (fact) => fact.data.reader === given.reader,
  });
  return allow([
    { kind: 'sharing.agreed', data: { ...data, ...old }, private: { name: name.trim() } },
  ]);
}

/** A letter was made ready. That it reached anybody is another matter (see the actions of the result). */
export function makeLetter(
  home: Home,
  given: { readonly person: PersonId; readonly test: TestId; readonly reader: Reader },
): Outcome {
  const letter = letterFor(home, given);
  if (!letter.ok) return letter;
  const { person, test, reader } = given;
  return allow([
    { kind: 'letter.made', data: { person, test, reader, result: letter.value.result.id } },
  ]);
}
