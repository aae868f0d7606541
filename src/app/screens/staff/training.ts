import type { Skill } from '../../../care/staff/facts.ts';
import { skills } from '../../../care/staff/facts.ts';
import type { Member } from '../../../care/staff/member.ts';
import type { Day } from '../../../care/time.ts';
import { addDays } from '../../../care/time.ts';
import type { Chip } from '../../pieces/list/chips.tsx';
import type { AllWords } from '../../words/en-all.ts';

/** How long ahead the end of a training is told, so that there is time to renew it. */
const SOON_DAYS = 30;

export type TrainingState = 'none' | 'ended' | 'soon' | 'in-date';

export interface Training {
  readonly skill: Skill;
  readonly until: Day | undefined;
  readonly state: TrainingState;
}

/** Each skill with how its training stands on a day; its last day still counts. */
export const trainingsOf = (member: Member, today: Day): Training[] =>
  skills.map((skill) => {
    const until = member.competence[skill];
    return { skill, until, state: stateOf(until, today) };
  });

function stateOf(until: Day | undefined, today: Day): TrainingState {
  if (until === undefined) return 'none';
  if (until < today) return 'ended';
  return until <= addDays(today, SOON_DAYS) ? 'soon' : 'in-date';
}

/** One skill beside a name: an ended one carries the diamond. */
export function trainingChip({ skill, until, state }: Training, { staffing }: AllWords): Chip {
  const name = staffing.skills[skill];
  const { chips } = staffing;
  if (until === undefined) return { key: skill, text: chips.none(name) };
  switch (state) {
    case 'ended':
      return { key: skill, text: chips.ended(name, until), look: true };
    case 'soon':
      return { key: skill, text: chips.soon(name, until), look: true };
    default:
      return { key: skill, text: chips.until(name, until) };
  }
}
