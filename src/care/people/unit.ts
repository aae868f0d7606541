import type { Home } from '../home.ts';
import { concluding, keysOn, lastStanding } from '../home.ts';
import type { UnitId } from '../ids.ts';

export interface Unit {
  readonly id: UnitId;
  readonly name: string;
}

export const unitOf: (home: Home, id: UnitId) => Unit = concluding('unit', (facts, id: UnitId) => ({
  id,
  name: lastStanding(facts, 'unit.described')?.private?.value ?? '',
}));

export const units = (home: Home): Unit[] =>
  [...keysOn(home, 'unit')]
    .map((id) => unitOf(home, id as UnitId))
    .sort((a, b) => a.name.localeCompare(b.name, 'en'));
