import type { Fact } from '../../care/catalogue.ts';
import { testOf } from '../../care/custody/test.ts';
import { turnOf } from '../../care/custody/turn.ts';
import type { Home } from '../../care/home.ts';
import type { PersonId, StaffId, TestId, UnitId } from '../../care/ids.ts';
import { GATEWAY, GROUP, SERVER } from '../../care/ids.ts';
import { personOf } from '../../care/people/person.ts';
import { unitOf } from '../../care/people/unit.ts';
import { memberOf } from '../../care/staff/member.ts';
import type { Words } from '../words/en.ts';

const machines: readonly string[] = [SERVER, GROUP, GATEWAY];

/** Who wrote a fact down, and with whom; what no person wrote is not laid at anybody's door. */
export function signedBy(fact: Fact, home: Home, words: Words): string {
  if (machines.includes(fact.by)) return words.facts.byTheProgram;
  const names = namesIn(home, words.refusals.somebody);
  return words.facts.signed(names.staff(fact.by), (fact.with ?? []).map(names.staff));
}

/** Names for the screen, from ids. An erased name is said to be erased, not left blank. */
export interface Names {
  readonly person: (id: PersonId | undefined) => string;
  readonly staff: (id: StaffId | undefined) => string;
  readonly unit: (id: UnitId | undefined) => string;
  /** Whose test it is. */
  readonly test: (id: TestId) => string;
}

export function namesIn(home: Home, unknown: string): Names {
  const person = (id: PersonId | undefined) =>
    (id === undefined ? '' : personOf(home, id).called) || unknown;
  return {
    person,
    staff: (id) => (id === undefined ? '' : memberOf(home, id).called) || unknown,
    unit: (id) => (id === undefined ? '' : unitOf(home, id).name) || unknown,
    test: (id) => {
      const { turn } = testOf(home, id);
      return person(turn === undefined ? undefined : turnOf(home, turn)?.person);
    },
  };
}
