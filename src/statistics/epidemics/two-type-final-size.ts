import { firstRefusal, nonNegative } from '../refusal/checks.ts';
import { given, type Outcome, refuse } from '../refusal/refusal.ts';
import { checkHousehold } from './household-check.ts';
import { checkInfectiousPeriod } from './infectious-period.ts';
import { fixedPeriodLaw } from './two-type-fixed-period.ts';
import type { JointLaw, TwoTypeQuestion } from './two-type-question.ts';
import { stagedPeriodLaw } from './two-type-staged-period.ts';

export interface TwoTypeFinalSize {
  /** Item j is P(j new cases among residents). */
  readonly residents: Float64Array;
  readonly staff: Float64Array;
  readonly meanResidents: number;
  readonly meanStaff: number;
  /** The chance of no new case at all. */
  readonly none: number;
}

function summarise(
  { residents: m, staff: n }: TwoTypeQuestion,
  joint: Float64Array,
): TwoTypeFinalSize {
  const residents = new Float64Array(m + 1);
  const staff = new Float64Array(n + 1);
  joint.forEach((chance, at) => {
    const [r, s] = [m - Math.floor(at / (n + 1)), n - (at % (n + 1))];
    residents[r] = (residents[r] as number) + chance;
    staff[s] = (staff[s] as number) + chance;
  });
  const mean = (pmf: Float64Array): number => pmf.reduce((sum, p, j) => sum + p * j, 0);
  return {
    residents,
    staff,
    meanResidents: mean(residents),
    meanStaff: mean(staff),
    none: joint[joint.length - 1] as number,
  };
}

/** States the chain may visit: beyond this the answer takes minutes. */
const MOST_STATES = 4e7;

function states({ residents, staff, introductions, period }: TwoTypeQuestion): number {
  const stages = period.law === 'erlang' ? period.shape : 1;
  const pairs = (m: number, a: number): number => (m + 1) * ((m * stages) / 2 + a * stages + 1);
  return pairs(residents, introductions.residents) * pairs(staff, introductions.staff);
}

/**
 * The exact law of an outbreak's final size in a home of residents and staff who mix unevenly.
 * Source: the two-group case of Ball (1986), computed infective by infective with positive terms
 * only, which keeps all figures where the triangular equations lose them beyond about 20 people.
 */
export function twoTypeFinalSize(question: TwoTypeQuestion): Outcome<TwoTypeFinalSize> {
  const { rates, introductions, period } = question;
  const refused = firstRefusal(
    checkHousehold({ susceptible: question.residents, introductions: introductions.residents }),
    checkHousehold({ susceptible: question.staff, introductions: introductions.staff }),
    ...Object.entries(rates).map(([name, rate]: readonly [string, number]) =>
      nonNegative(name, rate),
    ),
    checkInfectiousPeriod(period),
  );
  if (refused) return refused;
  if (states(question) > MOST_STATES)
    return refuse(
      'too-large',
      'These groups are too large for the exact law: use the large-population final size.',
    );
  const law: JointLaw = period.law === 'fixed' ? fixedPeriodLaw : stagedPeriodLaw;
  return given(summarise(question, law(question)));
}
