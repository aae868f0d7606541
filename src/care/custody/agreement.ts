import type { FactOf } from '../catalogue.ts';
import type { Home } from '../home.ts';
import type { StaffId, TestId } from '../ids.ts';
import type { Code, How } from '../kind.ts';
import type { Instant } from '../time.ts';
import { testOf } from './test.ts';

/** Where one test's code was read, and by whom and how: tube = bag = record, shown and not just claimed. */
export interface Reading {
  readonly place: 'record' | 'tube' | 'bag' | 'box';
  readonly code: Code;
  readonly how: How;
  readonly at: Instant;
  readonly by: StaffId;
  /** A second person read a typed code that is nearly another: who was there, and what was ruled out. */
  readonly second: readonly StaffId[];
  readonly ruledOut: readonly Code[];
}

export interface Agreement {
  readonly readings: readonly Reading[];
  /** `yes`: record, tube and bag were all read and are the same. `not-yet`: one was not read. */
  readonly agrees: 'yes' | 'no' | 'not-yet';
}

type Read = FactOf<'kit.opened'> | FactOf<'label.read'> | FactOf<'bag.packed'>;

function reading(place: Reading['place'], fact: Read): Reading {
  const { code, how, near } = fact.data;
  return {
    ...{ place, code, how, at: fact.at, by: fact.by },
    second: near === undefined ? [] : (fact.with ?? []),
    ruledOut: near ?? [],
  };
}

/** Every reading of a test's code that stands, in the order of the chain. */
export function agreementOf(home: Home, id: TestId): Agreement {
  const test = testOf(home, id);
  const readings = [
    ...(test.opened === undefined ? [] : [reading('record', test.opened)]),
    ...test.labels.map((fact) => reading(fact.data.place, fact)),
    ...test.packed.map((fact) => reading('box', fact)),
  ];
  const places = new Set(readings.map(({ place }) => place));
  const whole = places.has('record') && places.has('tube') && places.has('bag');
  const differ = new Set(readings.map(({ code }) => code)).size > 1;
  return { readings, agrees: differ ? 'no' : whole ? 'yes' : 'not-yet' };
}
