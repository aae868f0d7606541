import type { Fact, FactOf } from '../catalogue.ts';
import type { Home } from '../home.ts';
import { concluding, lastStanding, ofKind, standing } from '../home.ts';
import type { BoxId, TestId, TurnId } from '../ids.ts';
import type { Code } from '../kind.ts';
import type { SpoilReason } from './facts.ts';

/** How far one kit has come at the bedside and the pack table, whatever was settled about it since. */
export type Stage =
  | 'opened'
  | 'checked'
  | 'tube-labelled'
  | 'labelled'
  | 'begun'
  | 'taken'
  | 'closed'
  | 'sealed'
  | 'packed'
  | 'spoiled';

/** One kit, from its spare label being read to the box: the record of one test. */
export interface Test {
  readonly id: TestId;
  readonly turn: TurnId | undefined;
  readonly stage: Stage;
  readonly opened: FactOf<'kit.opened'> | undefined;
  /** The code on the record. */
  readonly code: Code | undefined;
  /** Every code that stands in any place: more than one is a finding. */
  readonly codes: readonly Code[];
  readonly labels: readonly FactOf<'label.read'>[];
  readonly checked: FactOf<'kit.checked'> | undefined;
  readonly way: FactOf<'way.chosen'> | undefined;
  readonly begun: boolean;
  readonly ended: readonly FactOf<'site.ended'>[];
  readonly running: FactOf<'site.started'> | undefined;
  readonly taken: FactOf<'swab.taken'> | undefined;
  readonly closed: FactOf<'tube.closed'> | undefined;
  readonly sealed: FactOf<'tube.sealed'> | undefined;
  readonly packed: readonly FactOf<'bag.packed'>[];
  readonly box: BoxId | undefined;
  readonly spoiled: FactOf<'kit.spoiled'> | undefined;
  readonly spoilReason: SpoilReason | undefined;
}

export const testOf: (home: Home, id: TestId) => Test = concluding('test', concludeTest);

function concludeTest(facts: readonly Fact[], id: TestId): Test {
  const opened = lastStanding(facts, 'kit.opened');
  const labels = standing(facts, 'label.read');
  const packed = standing(facts, 'bag.packed');
  const spoiled = lastStanding(facts, 'kit.spoiled');
  const starts = ofKind(facts, 'site.started');
  const ended = ofKind(facts, 'site.ended');
  const over = new Set(ended.map((fact) => fact.data.site));
  const parts = {
    opened,
    labels,
    packed,
    spoiled,
    checked: lastStanding(facts, 'kit.checked'),
    taken: lastStanding(facts, 'swab.taken'),
    closed: lastStanding(facts, 'tube.closed'),
    sealed: lastStanding(facts, 'tube.sealed'),
    begun: starts.length > 0,
  };
  return {
    ...parts,
    id,
    turn: turnIn(facts),
    stage: stage(parts),
    code: opened?.data.code,
    codes: distinctCodes(standing(facts, 'kit.opened'), labels, packed),
    way: ofKind(facts, 'way.chosen').at(-1),
    ended,
    running: starts.findLast((fact) => !over.has(fact.data.site)),
    box: packed.at(-1)?.data.box,
    spoilReason: spoiled?.data.why,
  };
}

/** Bedside facts name their turn; registrations and results about the same test do not. */
function turnIn(facts: readonly Fact[]): TurnId | undefined {
  for (const fact of facts) if ('turn' in fact.data) return fact.data.turn;
  return undefined;
}

type Parts = Pick<
  Test,
  'checked' | 'labels' | 'begun' | 'taken' | 'closed' | 'sealed' | 'packed' | 'spoiled'
>;

function stage(parts: Parts): Stage {
  if (parts.spoiled !== undefined) return 'spoiled';
  if (parts.packed.length > 0) return 'packed';
  if (parts.sealed !== undefined) return 'sealed';
  if (parts.closed !== undefined) return 'closed';
  if (parts.taken !== undefined) return 'taken';
  if (parts.begun) return 'begun';
  const places = new Set(parts.labels.map((fact) => fact.data.place));
  if (places.has('bag')) return 'labelled';
  if (places.has('tube')) return 'tube-labelled';
  return parts.checked === undefined ? 'opened' : 'checked';
}

function distinctCodes(
  ...groups: readonly (readonly { readonly data: { readonly code: Code } }[])[]
): Code[] {
  return [...new Set(groups.flat().map((fact) => fact.data.code))].sort();
}

/** A tube exists and has not been closed for ever: it must end in a box. */
export const isLive = (test: Test): boolean =>
  test.taken !== undefined && test.spoiled === undefined;
