import { turnsInRound } from '../custody/person-turns.ts';
import type { Home } from '../home.ts';
import type { PersonId } from '../ids.ts';
import { actionsFor, isSettled } from '../results/actions.ts';
import { registerList } from '../results/registering.ts';
import { swabsInRound, takenOutInRound } from './history.ts';
import type { Round } from './round.ts';
import type { Tally } from './tally.ts';
import { tallyOf } from './tally.ts';
import { uncollected } from './uncollected.ts';

/** What a round waits for, in the order of the work. */
export const roundStages = [
  'planned',
  'swabbing',
  'packing',
  'courier',
  'registering',
  'results',
  'acting',
  'settled',
] as const;
export type RoundStage = (typeof roundStages)[number];

export interface Progress {
  readonly stage: RoundStage;
  readonly tally: Tally;
  /** People on the list with whom nobody has begun. */
  readonly waiting: readonly PersonId[];
  readonly toRegister: number;
  readonly resultsWaiting: number;
  readonly toActOn: number;
}

/** How far a round has come, and what it waits for next. */
export function progressOf(home: Home, round: Round): Progress {
  const tally = tallyOf(home, round);
  const swabs = swabsInRound(home, round);
  const counts = {
    tally,
    waiting: round.people
      .map(({ person }) => person)
      .filter((person) => turnsInRound(home, person, round.id).length === 0),
    toRegister: registerList(home, round).filter(
      ({ registration }) => registration.registered === undefined,
    ).length,
    resultsWaiting: swabs.filter(({ outcome }) => outcome.state === 'waiting').length,
    toActOn: [...swabs, ...takenOutInRound(home, round)].filter(
      ({ test }) => !actionsFor(home, test.id).every(isSettled),
    ).length,
  };
  return { ...counts, stage: stageOf(home, round, counts) };
}

function stageOf(home: Home, round: Round, counts: Omit<Progress, 'stage'>): RoundStage {
  const { tally, waiting } = counts;
  if (round.closings.length === 0) {
    if (round.turns.length === 0) return 'planned';
    if (waiting.length > 0 || tally.openTurns.length > 0) return 'swabbing';
    // Also where nobody was swabbed after all: somebody still has to close it.
    return 'packing';
  }
  if (uncollected(home, round) !== undefined) return 'courier';
  if (counts.toRegister > 0) return 'registering';
  if (counts.resultsWaiting > 0) return 'results';
  return counts.toActOn > 0 ? 'acting' : 'settled';
}
