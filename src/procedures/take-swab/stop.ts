import type { NewFact } from '../../care/catalogue.ts';
import type { SpoilReason } from '../../care/custody/facts.ts';
import type { Test } from '../../care/custody/test.ts';
import type { Turn } from '../../care/custody/turn.ts';
import { ownStops } from '../../care/custody/turn.ts';
import type { Home } from '../../care/home.ts';
import { policyOn } from '../../care/policy/in-force.ts';
import { allow, refuse } from '../../care/refusal.ts';
import { elapsed, MINUTE } from '../../care/time.ts';
import type { Doing, Outcome } from '../doing.ts';
import { today } from '../doing.ts';
import { nobodyKnows, pairRefusal } from './start.ts';
import type { TurnTouch } from './touch.ts';

const spoiled = (turn: Turn, test: Test, why: SpoilReason): NewFact => ({
  kind: 'kit.spoiled',
  data: { turn: turn.id, test: test.id, why },
});

/**
 * Stop, at one tap, whatever is on the screen. A swab that had begun is over and its kit is closed.
 * Once the swab is out the person is left in peace and the tube goes on. A stop from another tablet or
 * hand is kept beside the first: that one may be taken back as a mistake.
 */
export function stop(turn: Turn, test: Test | undefined, doing: Doing): Outcome {
  if (ownStops(turn, doing).length > 0) return allow([]);
  const facts: NewFact[] = [{ kind: 'turn.stopped', data: { turn: turn.id } }];
  if (test?.begun === true && test.taken === undefined) facts.push(spoiled(turn, test, 'stopped'));
  return allow(facts);
}

/**
 * Pressed by mistake: the person did not ask for it. Only one's own stop is taken back; if none is left
 * the person is asked again whether they are willing.
 */
export function stopMistaken(turn: Turn, doing: Doing): Outcome {
  const replaces = ownStops(turn, doing).map(({ id }) => id);
  return replaces.length === 0
    ? refuse({ reason: 'not-this-step', step: 'stopped' })
    : allow([{ kind: 'stop.mistaken', data: { turn: turn.id, replaces } }]);
}

export function explainStop(
  turn: Turn,
  touch: Extract<TurnTouch, { do: 'explain-stop' }>,
): Outcome {
  if (turn.stop === undefined) return refuse({ reason: 'not-this-step', step: 'stopped' });
  const replaces = turn.stopWhy === undefined ? {} : { replaces: [turn.stopWhy.id] };
  return allow([{ kind: 'stop.explained', data: { turn: turn.id, why: touch.why, ...replaces } }]);
}

/** These only make sense of a tube; before one is taken they are told as something else. */
const afterTaken = new Set<SpoilReason>(['leak', 'asked-not-to-send']);

/** Something is wrong with the kit: it is closed for ever, and said why. */
export function kitFault(
  turn: Turn,
  test: Test,
  touch: Extract<TurnTouch, { do: 'kit-fault' }>,
): Outcome {
  if (afterTaken.has(touch.why) && test.taken === undefined) {
    return refuse({ reason: 'not-this-step', step: test.stage });
  }
  const facts = [spoiled(turn, test, touch.why)];
  if (touch.why !== 'asked-not-to-send') return allow(facts);
  const stopped: NewFact[] =
    turn.stop === undefined
      ? [{ kind: 'turn.stopped', data: { turn: turn.id, why: 'said-no' } }]
      : [];
  return allow([...stopped, ...facts]);
}

export const interrupt = (turn: Turn, touch: Extract<TurnTouch, { do: 'interrupt' }>): Outcome =>
  allow([{ kind: 'turn.interrupted', data: { turn: turn.id, why: touch.why } }]);

type Resume = Extract<TurnTouch, { do: 'resume' }>;

/**
 * Taking a turn up again, on this tablet or another. What became of an open kit is always asked: a
 * swab that had begun without its lid on is spoiled, and so is a kit that was lost from sight.
 */
export function resume(
  home: Home,
  turn: Turn,
  test: Test | undefined,
  { touch, doing }: { touch: Resume; doing: Doing },
): Outcome {
  const on = today(home, doing);
  const who = { ...touch, person: turn.person };
  const refusal = pairRefusal(home, touch, on) ?? nobodyKnows(home, who);
  if (refusal !== undefined) return refuse(refusal);
  if ((test === undefined) !== (touch.tube === 'none-open'))
    return refuse({ reason: 'tube-fate-unsaid' });
  const spoils = test !== undefined && !survives(test, touch.tube);
  const again =
    spoils || test?.taken === undefined ? askAgain(home, turn, { touch, doing }) : 'nothing';
  const { swabber, recorder, tube } = touch;
  return allow([
    ...(turn.interrupted === undefined
      ? [{ kind: 'turn.interrupted', data: { turn: turn.id, why: 'handed-over' } } as const]
      : []),
    {
      kind: 'turn.resumed',
      data: { turn: turn.id, swabber, recorder, tube, again, after: turn.lastFact },
      with: [swabber],
    },
    ...(spoils ? [spoiled(turn, test, 'interrupted')] : []),
  ]);
}

/** A swab in its tube is safe with the lid on; a kit not yet used only if nobody let it out of sight. */
function survives(test: Test, tube: Resume['tube']): boolean {
  if (test.taken !== undefined) return tube === 'lid-was-on';
  return !test.begun && tube === 'kept-safe';
}

/** The same pair within a few minutes asks only whether the person is still willing. */
function askAgain(
  home: Home,
  turn: Turn,
  { touch, doing }: { touch: Resume; doing: Doing },
): 'who' | 'willing' {
  const { samePairMayResumeMinutes } = policyOn(home, today(home, doing)).policy.technique;
  const same = touch.swabber === turn.pair.swabber && touch.recorder === turn.pair.recorder;
  const since = turn.interrupted?.at;
  const soon =
    since !== undefined && elapsed(since, doing.now) <= samePairMayResumeMinutes.value * MINUTE;
  return same && soon && !turn.needsWho ? 'willing' : 'who';
}
