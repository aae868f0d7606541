import { turnsInRound } from '../../../care/custody/person-turns.ts';
import type { Home } from '../../../care/home.ts';
import type { PersonId, RoundId } from '../../../care/ids.ts';
import { housemates } from '../../../care/people/person.ts';
import type { Refusal } from '../../../care/refusal.ts';
import type { DueLine } from '../../../care/rounds/due.ts';
import { dueOn } from '../../../care/rounds/due.ts';
import { readinessOf } from '../../../care/rounds/readiness.ts';
import { roundsOn } from '../../../care/rounds/round.ts';
import type { Day, Instant } from '../../../care/time.ts';

/**
 * `due` and ready; `held` and due, but something is missing; `resting`: a rule says not now; `begun` in
 * this round already; `elsewhere` on another round of that day; `other`: no rule asks for them.
 */
export type Group = 'due' | 'held' | 'resting' | 'begun' | 'elsewhere' | 'other';

export interface Candidate {
  readonly person: PersonId;
  readonly group: Group;
  readonly line: DueLine | undefined;
  readonly holds: readonly Refusal[];
}

interface Question {
  readonly round?: RoundId | undefined;
  readonly day: Day;
  readonly test: string;
  /** A tube that has grown too old by now makes its person due. */
  readonly now: Instant;
}

/** Everybody who lives here, most pressing first, with how they stand to this round. */
export function candidatesFor(home: Home, { round, day, test, now }: Question): Candidate[] {
  const lines = new Map(dueOn(home, { on: day, test, now }).map((line) => [line.person.id, line]));
  const elsewhere = new Set(
    roundsOn(home, day)
      .filter((other) => other.id !== round && other.planned.data.test === test)
      .flatMap((other) => other.people.map(({ person }) => person)),
  );
  const ids = [...new Set([...lines.keys(), ...housemates(home).map(({ id }) => id)])];
  return ids.map((person) => {
    const line = lines.get(person);
    const { holds } = readinessOf(home, person, { test, on: day });
    const begun = round !== undefined && turnsInRound(home, person, round).length > 0;
    const group = begun ? 'begun' : elsewhere.has(person) ? 'elsewhere' : groupOf(line, holds);
    return { person, group, line, holds };
  });
}

function groupOf(line: DueLine | undefined, holds: readonly Refusal[]): Group {
  if (line === undefined) return 'other';
  if (line.excluded !== undefined) return 'resting';
  return holds.length > 0 ? 'held' : 'due';
}

/** Who is on the list unless somebody says otherwise. */
export const isDefault = ({ group }: Candidate): boolean => group === 'due' || group === 'begun';
