import type { Home } from '../home.ts';
import type { PersonId, RoundId } from '../ids.ts';
import type { Misfit, Weighed } from '../results/fit.ts';
import { misfitsInHistory, misfitsInRound } from '../results/fit.ts';
import type { Finding } from './finding.ts';
import { finding } from './finding.ts';
import { turnOfTest } from './of-code.ts';

/** Results that contradict a person's own history. */
export const misfitsOfPerson = (home: Home, person: PersonId): Finding[] =>
  misfitsInHistory(home, person).map(asFinding);

/** Results of a round that look as if two neighbours' tubes had been crossed. */
export const misfitsOfRound = (home: Home, round: RoundId): Finding[] =>
  misfitsInRound(home, round).map(asFinding);

const keyOf = ({ kind, doubtful }: Misfit): string =>
  [kind, ...doubtful.map(({ test }) => test.id).sort()].join('/');

/** The doubtful tests are held; whoever decides has seen every result it rests on. */
const asFinding = (misfit: Misfit): Finding =>
  finding('result-does-not-fit', keyOf(misfit), {
    members: [...misfit.doubtful, ...misfit.against].map(({ result }) => result.id),
    tests: misfit.doubtful.map(({ test }: Weighed) => test.id).sort(),
  });

/** Why a finding of this kind was made, with its odds, for the page on which somebody decides. */
export function misfitOf(home: Home, found: Finding): Misfit | undefined {
  const people = new Set<PersonId>();
  const rounds = new Set<RoundId>();
  for (const id of found.tests) {
    const turn = turnOfTest(home, id);
    if (turn === undefined) continue;
    people.add(turn.person);
    rounds.add(turn.round);
  }
  return [
    ...[...people].flatMap((person) => misfitsInHistory(home, person)),
    ...[...rounds].flatMap((round) => misfitsInRound(home, round)),
  ].find((misfit) => keyOf(misfit) === found.key);
}
