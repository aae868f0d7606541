import type { Home } from '../home.ts';
import { factsIn, standing } from '../home.ts';
import type { Policy } from '../policy/policy.ts';
import { rounds } from '../rounds/round.ts';
import type { Day } from '../time.ts';
import type { PpeItem } from './facts.ts';
import { ppeItems } from './facts.ts';

export type PpeCounts = Readonly<Record<PpeItem, number>>;

/** What a round with so many people and one pair takes, with policy's spare, rounded up. */
export function ppeNeeded(policy: Policy, people: number): PpeCounts {
  const { aprons, glovePairs, masksPerStaff, sparePercent } = policy.ppe;
  // Each of the pair changes gloves and apron between people; masks stay on for the round.
  const spare = (count: number) => Math.ceil((count * (100 + sparePercent.value)) / 100);
  return {
    gloves: spare(2 * people * glovePairs.value),
    aprons: spare(2 * people * aprons.value),
    masks: spare(2 * masksPerStaff.value),
    'eye-protection': 2,
  };
}

export interface PpeLeft {
  readonly item: PpeItem;
  readonly countedOn: Day | undefined;
  /** The last count less what the turns since then should have taken. */
  readonly left: number | undefined;
}

export function ppeLeft(home: Home, policy: Policy): PpeLeft[] {
  const counts = standing(factsIn(home, 'ppe', 'counted'), 'ppe.counted');
  return ppeItems.map((item) => {
    const last = counts.findLast((fact) => fact.data.item === item);
    if (last === undefined) return { item, countedOn: undefined, left: undefined };
    const turns = rounds(home)
      .filter((round) => round.planned.data.day > last.data.on)
      .reduce((sum, round) => sum + round.turns.length, 0);
    const each = { gloves: 2 * policy.ppe.glovePairs.value, aprons: 2 * policy.ppe.aprons.value };
    const used = item === 'gloves' || item === 'aprons' ? turns * each[item] : 0;
    return { item, countedOn: last.data.on, left: Math.max(0, last.data.count - used) };
  });
}
