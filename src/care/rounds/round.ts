import type { Fact, FactOf } from '../catalogue.ts';
import type { Home } from '../home.ts';
import { concluding, keysOn, lastStanding, ofKind, standing } from '../home.ts';
import type { BoxId, PersonId, RoundId, TurnId } from '../ids.ts';
import type { Day, Instant } from '../time.ts';

export type Listed = FactOf<'round.listed'>['data']['people'][number];
export type LeftOff = FactOf<'round.listed'>['data']['leftOff'][number];

export interface Box {
  readonly id: BoxId;
  readonly started: FactOf<'box.started'>;
  readonly closed: FactOf<'box.closed'> | undefined;
  /** More than one that stands, with different counts, is a finding. */
  readonly handed: readonly FactOf<'box.handed'>[];
}

export interface Round {
  readonly id: RoundId;
  readonly planned: FactOf<'round.planned'>;
  /** In the order planned. Where two lists stand, everybody on either is on the round. */
  readonly people: readonly Listed[];
  readonly leftOff: readonly LeftOff[];
  readonly lists: readonly FactOf<'round.listed'>[];
  /** Oldest first. */
  readonly turns: readonly TurnId[];
  readonly boxes: readonly Box[];
  readonly closings: readonly FactOf<'round.closed'>[];
  readonly missed: readonly FactOf<'courier.missed'>[];
  /** When the courier comes, as last booked. */
  readonly courier: Instant;
  readonly rebooked: FactOf<'courier.rebooked'> | undefined;
  readonly touched: FactOf<'tablet.touched'> | undefined;
}

export const roundOf: (home: Home, id: RoundId) => Round | undefined = concluding(
  'round',
  concludeRound,
);

function concludeRound(facts: readonly Fact[], id: RoundId): Round | undefined {
  const planned = lastStanding(facts, 'round.planned');
  if (planned === undefined) return undefined;
  const lists = standing(facts, 'round.listed');
  const rebooked = lastStanding(facts, 'courier.rebooked');
  const wiped = new Set(ofKind(facts, 'tablet.wiped').flatMap((fact) => fact.data.replaces ?? []));
  return {
    id,
    planned,
    lists,
    people: union(lists),
    leftOff: lists.at(-1)?.data.leftOff ?? [],
    turns: standing(facts, 'turn.opened').map((fact) => fact.data.turn),
    boxes: boxes(facts),
    closings: standing(facts, 'round.closed'),
    missed: standing(facts, 'courier.missed'),
    courier: rebooked?.data.due ?? planned.data.courier,
    rebooked,
    touched: ofKind(facts, 'tablet.touched').findLast((fact) => !wiped.has(fact.id)),
  };
}

function union(lists: readonly FactOf<'round.listed'>[]): Listed[] {
  const seen = new Map<PersonId, Listed>();
  // The newest list gives the order; anybody only on another follows.
  for (const list of lists.toReversed()) {
    for (const each of list.data.people) if (!seen.has(each.person)) seen.set(each.person, each);
  }
  return [...seen.values()];
}

function boxes(facts: readonly Fact[]): Box[] {
  const closed = standing(facts, 'box.closed');
  const handed = standing(facts, 'box.handed');
  return standing(facts, 'box.started').map((started) => ({
    id: started.data.box,
    started,
    closed: closed.findLast((fact) => fact.data.box === started.data.box),
    handed: handed.filter((fact) => fact.data.box === started.data.box),
  }));
}

/** Every round, newest day first. */
export const rounds = (home: Home): Round[] =>
  [...keysOn(home, 'round')]
    .flatMap((id) => roundOf(home, id as RoundId) ?? [])
    .sort((a, b) => {
      const [x, y] = [a.planned.data, b.planned.data];
      return x.day === y.day ? (a.courier < b.courier ? 1 : -1) : x.day < y.day ? 1 : -1;
    });

export const roundsOn = (home: Home, on: Day): Round[] =>
  rounds(home).filter((round) => round.planned.data.day === on);
