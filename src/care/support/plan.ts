import type { Fact, FactOf } from '../catalogue.ts';
import type { Home } from '../home.ts';
import { concluding, lastStanding, standing } from '../home.ts';
import type { PersonId, StaffId } from '../ids.ts';
import type { Day, Instant } from '../time.ts';
import type { PlanField } from './facts.ts';

export interface OpenCaution {
  readonly raised: FactOf<'caution.raised'>;
  readonly answer: FactOf<'caution.answered'> | undefined;
}

export interface Plan {
  /** Text of a field of the plan; empty where nothing is written. */
  readonly text: (about: PlanField) => string;
  readonly written: boolean;
  readonly lastChanged: Instant | undefined;
  readonly nextReview: Day | undefined;
  readonly sites: 'throat-and-nose' | 'nose-only';
  readonly identity: 'birthday' | 'face';
  readonly selfSwab: boolean;
  readonly cautions: readonly OpenCaution[];
  readonly preparations: readonly FactOf<'preparation.agreed'>[];
  /** Fields that two colleagues wrote without knowing of each other. */
  readonly clashes: readonly PlanField[];
  /** Who wrote last, and when the plan was accepted as read. */
  readonly lastBy: StaffId | undefined;
}

export const planOf: (home: Home, id: PersonId) => Plan = concluding('person', concludePlan);

function concludePlan(facts: readonly Fact[]): Plan {
  const described = standing(facts, 'support.described');
  const texts = new Map(described.map((fact) => [fact.data.about, fact.private?.value ?? '']));
  const ways = lastStanding(facts, 'support.ways')?.data;
  return {
    text: (about) => texts.get(about) ?? '',
    written: described.length > 0,
    lastChanged: described.at(-1)?.at,
    nextReview: lastStanding(facts, 'support.reviewed')?.data.next,
    sites: ways?.sites ?? 'throat-and-nose',
    identity: ways?.identity ?? 'birthday',
    selfSwab: ways?.selfSwab ?? false,
    cautions: cautions(facts),
    preparations: standing(facts, 'preparation.agreed'),
    clashes: clashing(described.map((fact) => fact.data.about)),
    lastBy: described.at(-1)?.by,
  };
}

const clashing = (fields: readonly PlanField[]): PlanField[] => [
  ...new Set(fields.filter((field, i) => fields.indexOf(field) !== i)),
];

function cautions(facts: readonly Fact[]): OpenCaution[] {
  const answers = standing(facts, 'caution.answered');
  return standing(facts, 'caution.raised')
    .map((raised) => ({
      raised,
      answer: answers.findLast((fact) => fact.data.caution === raised.id),
    }))
    .filter(({ answer }) => answer?.data.answer !== 'no-longer-applies');
}

/** Whether a caution keeps everybody from swabbing on a day, and why. */
export function cautionHolds(caution: OpenCaution, on: Day): 'unanswered' | 'said-no' | undefined {
  const { answer } = caution;
  if (answer === undefined) return 'unanswered';
  if (answer.data.until !== undefined && answer.data.until < on) return 'unanswered';
  return answer.data.answer === 'do-not-swab' ? 'said-no' : undefined;
}

/** The sites that may be taken on a day: a clinician's "nose only" outranks the plan. */
export const sitesOn = (plan: Plan, on: Day): 'throat-and-nose' | 'nose-only' =>
  plan.cautions.some(
    ({ answer }) =>
      answer?.data.answer === 'nose-only' &&
      (answer.data.until === undefined || answer.data.until >= on),
  )
    ? 'nose-only'
    : plan.sites;
