import type { Home } from '../home.ts';
import { policyOn } from '../policy/in-force.ts';
import type { Day } from '../time.ts';
import type { RulePack } from './rule-pack.ts';

/** The rule pack that the policy in force on a day names; undefined where it names none. */
export function packOn(home: Home, on: Day): RulePack | undefined {
  const { decisions } = policyOn(home, on).policy;
  return decisions?.packs.find(({ pack }) => pack === decisions.pack.value);
}
