import type { NewFact } from '../../care/catalogue.ts';
import { turnsInRound } from '../../care/custody/person-turns.ts';
import type { Test } from '../../care/custody/test.ts';
import type { Turn } from '../../care/custody/turn.ts';
import type { Home } from '../../care/home.ts';
import { factsIn, ofKind } from '../../care/home.ts';
import type { FactId } from '../../care/ids.ts';
import { identityWay } from '../../care/people/way-of-knowing.ts';
import { noIn } from '../../care/quality/of-round.ts';
import { allow, refuse } from '../../care/refusal.ts';
import type { Doing, Outcome } from '../doing.ts';
import { today } from '../doing.ts';
import { witnesses } from '../second-person.ts';
import { tooFewKnow } from './known.ts';
import type { TurnTouch } from './touch.ts';

type Identify = Extract<TurnTouch, { do: 'identify' }>;
type Willing = Extract<TurnTouch, { do: 'willing' }>;

/** T2. The blind choice. Anybody but this person ends the turn; who was picked is kept as a near miss. */
export function identify(
  home: Home,
  turn: Turn,
  touch: Identify,
  { test, doing }: { readonly test: Test | undefined; readonly doing: Doing },
): Outcome {
  const way = identityWay(home, turn.person);
  const who = { ...turn.pair, person: turn.person, also: touch.also };
  const refusal = tooFewKnow(home, who, today(home, doing));
  if (refusal !== undefined) return refuse(refusal);
  const facts: NewFact[] = [
    {
      kind: 'identity.established',
      data: { turn: turn.id, way, chosen: touch.chosen },
      ...witnesses(doing, [turn.pair.swabber, touch.also]),
    },
  ];
  if (touch.chosen !== turn.person) {
    facts.push(...spoilOpen(turn, test), {
      kind: 'turn.closed',
      data: { turn: turn.id, end: 'not-them' },
    });
  }
  return allow(facts);
}

/** T3. Anything but yes is not now. A yes says which earlier noes it knew of. */
export function willing(home: Home, turn: Turn, touch: Willing, test: Test | undefined): Outcome {
  const { answer } = touch;
  const knowing = answer === 'yes' ? earlierNoes(home, turn) : [];
  const facts: NewFact[] = [
    {
      kind: 'willingness.seen',
      data: { turn: turn.id, answer, ...(knowing.length > 0 && { knowing }) },
    },
  ];
  if (answer !== 'yes') {
    const end = answer === 'no' ? 'declined' : 'not-now';
    facts.push(...spoilOpen(turn, test), { kind: 'turn.closed', data: { turn: turn.id, end } });
  }
  return allow(facts);
}

/** Every no and stop in the round; in this turn also the stops that were taken back, on whichever tablet. */
const earlierNoes = (home: Home, turn: Turn): FactId[] => [
  ...ofKind(factsIn(home, 'turn', turn.id), 'turn.stopped').map(({ id }) => id),
  ...turnsInRound(home, turn.person, turn.round)
    .filter((other) => other.id !== turn.id)
    .flatMap(noIn),
];

/** A kit that was opened for somebody who then did not want it is never used for anybody. */
export const spoilOpen = (turn: Turn, test: Test | undefined): NewFact[] =>
  test === undefined
    ? []
    : [{ kind: 'kit.spoiled', data: { turn: turn.id, test: test.id, why: 'stopped' } }];
