import type { FactOf, NewFact } from '../care/catalogue.ts';
import type { Home } from '../care/home.ts';
import { factsIn, standing } from '../care/home.ts';
import type { FactId, PersonId, RoundId } from '../care/ids.ts';
import type { Refusal } from '../care/refusal.ts';
import { allow, refuse } from '../care/refusal.ts';
import { ranks } from '../care/staff/rights.ts';
import type { Caution, PlanField } from '../care/support/facts.ts';
import { planOf } from '../care/support/plan.ts';
import type { Day } from '../care/time.ts';
import { standingFor } from './describe.ts';
import type { Doing, Outcome } from './doing.ts';
import { wrongDay, wrongText } from './wrong-entry.ts';

/** The support plan, field by field; an empty text takes a field out. */
export function writePlan(
  home: Home,
  plan: {
    readonly person: PersonId;
    readonly fields: Partial<Record<PlanField, string>>;
    readonly next?: Day;
  },
): Outcome {
  const { person } = plan;
  const described = standing(factsIn(home, 'person', person), 'support.described');
  const facts: NewFact[] = [];
  for (const [about, raw] of Object.entries(plan.fields) as [PlanField, string][]) {
    const value = raw.trim().normalize('NFC');
    const now = described.findLast((fact) => fact.data.about === about)?.private?.value ?? '';
    if (value.length > 4000) return refuse({ reason: 'too-long', field: about, most: 4000 });
    if (value === now) continue;
    const old = standingFor(home, ['person', person], {
      kind: 'support.described',
      where: (fact) => fact.data.about === about,
    });
    facts.push({ kind: 'support.described', data: { person, about, ...old }, private: { value } });
  }
  if (plan.next !== undefined && plan.next !== planOf(home, person).nextReview) {
    const wrong = wrongDay(plan.next, { field: 'next' });
    if (wrong !== undefined) return refuse(wrong);
    const old = standingFor(home, ['person', person], { kind: 'support.reviewed' });
    facts.push({ kind: 'support.reviewed', data: { person, next: plan.next, ...old } });
  }
  return allow(facts);
}

export const setWays = (
  home: Home,
  ways: Omit<FactOf<'support.ways'>['data'], 'replaces'>,
): Outcome =>
  allow([
    {
      kind: 'support.ways',
      data: { ...ways, ...standingFor(home, ['person', ways.person], { kind: 'support.ways' }) },
    },
  ]);

/** Anybody may raise a caution; from then on a swab waits for a clinician's answer. */
export function raiseCaution(raised: {
  readonly person: PersonId;
  readonly caution: Caution;
  readonly note: string;
}): Outcome {
  const { person, caution, note } = raised;
  const wrong = wrongText(note, { field: 'note', most: 500 });
  if (wrong !== undefined) return refuse(wrong);
  return allow([
    { kind: 'caution.raised', data: { person, caution }, private: { note: note.trim() } },
  ]);
}

interface FromClinician {
  readonly clinician: string;
  readonly words: string;
}

const wrongClinician = ({ clinician, words }: FromClinician): Refusal | undefined =>
  wrongText(clinician, { field: 'clinician', most: 500 }) ??
  wrongText(words, { field: 'words', most: 4000 });

export function answerCaution(
  home: Home,
  given: FromClinician & {
    readonly person: PersonId;
    readonly caution: FactId;
    readonly answer: FactOf<'caution.answered'>['data']['answer'];
    readonly until?: Day;
  },
  doing: Doing,
): Outcome {
  if (!ranks(home, doing.by, 'senior')) return refuse({ reason: 'needs-senior' });
  const { clinician, words, ...data } = given;
  const wrong =
    wrongClinician(given) ??
    (data.until === undefined ? undefined : wrongDay(data.until, { field: 'until' }));
  if (wrong !== undefined) return refuse(wrong);
  const old = standingFor(home, ['person', given.person], {
    kind: 'caution.answered',
    where: (fact) => fact.data.caution === given.caution,
  });
  return allow([
    {
      kind: 'caution.answered',
      data: { ...data, ...old },
      private: { clinician: clinician.trim(), words: words.trim() },
    },
  ]);
}

/**
 * What was agreed with the doctor to do beforehand, and how long ahead. Never a dose. `instead` names
 * the agreement that this one stands in for.
 */
export function agreePreparation(
  given: Omit<FactOf<'preparation.agreed'>['data'], 'replaces'> &
    FromClinician & { readonly instead?: FactId },
): Outcome {
  const { clinician, words, instead, ...data } = given;
  const lead = data.leadMinutes;
  const wrong = wrongClinician(given) ?? wrongDay(data.until, { field: 'until' });
  if (wrong !== undefined) return refuse(wrong);
  if (!Number.isInteger(lead) || lead < 0 || lead > 24 * 60)
    return refuse({ reason: 'not-a-count', field: 'leadMinutes' });
  return allow([
    {
      kind: 'preparation.agreed',
      data: { ...data, ...(instead !== undefined && { replaces: [instead] }) },
      private: { clinician: clinician.trim(), words: words.trim() },
    },
  ]);
}

export const preparationDone = (done: {
  readonly person: PersonId;
  readonly round: RoundId;
  readonly agreed: FactId;
}): Outcome => allow([{ kind: 'preparation.done', data: done }]);
