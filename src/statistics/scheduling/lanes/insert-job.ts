import { below, type Chance, uniform } from '../../random/chance.ts';
import { advance, servable } from './flat-lanes.ts';
import type { LaneDraft } from './lane-draft.ts';

export interface Place {
  readonly lane: number;
  readonly at: number;
  readonly added: number;
}

/** The costs that all lanes share, with one lane's end and work as they would be. */
function shared(draft: LaneDraft, lane: number, end: number, work: number): number {
  const { lanes, problem } = draft.flat;
  const { weights } = problem;
  let [finish, most, least] = [end, work, work];
  for (let k = 0; k < lanes; k++) {
    if (k === lane) continue;
    finish = Math.max(finish, draft.endOf(k));
    const other = draft.work[k] as number;
    if (other > most) most = other;
    if (other < least) least = other;
  }
  return weights.finish * (finish - weights.origin) + weights.imbalance * (most - least);
}

const scratch = { before: 0, end: 0, cost: 0, uses: 0 };

/**
 * The cheapest place for a job that is out, or nothing where each place breaks a rule or costs more
 * than leaving it out. `slack` times out of 64 a place is overlooked, so that searches differ.
 */
export function cheapestPlace(
  draft: LaneDraft,
  job: number,
  { chance, overlook }: { readonly chance: Chance; readonly overlook: boolean },
): Place | undefined {
  const { flat } = draft;
  const { limits } = flat.problem;
  const served = draft.served() + 1;
  if (served > limits.served) return undefined;
  const by = limits.finish - limits.finishEach * served;
  for (let k = 0; k < flat.lanes; k++)
    if ((draft.sequences[k] as number[]).length > 0 && draft.endOf(k) > by) return undefined;
  const usesLeft = limits.uses - draft.uses();
  const duration = flat.duration[job] as number;
  let best: Place | undefined;
  // Now and then a job is put back though it costs more than leaving it out: another may make it pay.
  let least = overlook && below(chance, 6) === 0 ? Infinity : (flat.leftOutCost[job] as number);
  for (let lane = 0; lane < flat.lanes; lane++) {
    if (!servable(flat, job, lane)) continue;
    const sequence = draft.sequences[lane] as number[];
    const states = draft.states[lane] as (typeof scratch)[];
    const now = draft.last(lane);
    const work = draft.work[lane] as number;
    const before = shared(draft, lane, draft.endOf(lane), work);
    for (let at = sequence.length; at >= 0; at--) {
      if (overlook && below(chance, 64) === 0) continue;
      const state = states[at] as typeof scratch;
      scratch.before = state.before;
      scratch.end = state.end;
      scratch.cost = state.cost;
      scratch.uses = state.uses;
      if (!advance(flat, lane, scratch, job)) continue;
      let fits = true;
      for (let i = at; fits && i < sequence.length; i++)
        fits = advance(flat, lane, scratch, sequence[i] as number);
      if (!fits || scratch.end > by || scratch.uses - now.uses > usesLeft) continue;
      const added =
        scratch.cost - now.cost + shared(draft, lane, scratch.end, work + duration) - before;
      // Places that cost the same are told apart by the lane's own end.
      const cost = added + 1e-3 * (scratch.end - now.end) + (overlook ? 1e-4 * uniform(chance) : 0);
      if (cost < least) {
        least = cost;
        best = { lane, at, added };
      }
    }
  }
  return best;
}
