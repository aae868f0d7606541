import type { NewFact } from '../../care/catalogue.ts';
import type { Step } from '../../care/custody/step.ts';
import { stepOf, testInHand } from '../../care/custody/step.ts';
import type { Test } from '../../care/custody/test.ts';
import type { Turn } from '../../care/custody/turn.ts';
import { turnOf } from '../../care/custody/turn.ts';
import type { Home } from '../../care/home.ts';
import { allow, refuse } from '../../care/refusal.ts';
import type { Doing, Outcome } from '../doing.ts';
import { identify, spoilOpen, willing } from './identify.ts';
import { openKit, readLabel } from './kit.ts';
import { start } from './start.ts';
import { explainStop, interrupt, kitFault, resume, stop, stopMistaken } from './stop.ts';
import { chooseWay, nextSite, out, startSite } from './swab.ts';
import type { Touch, TurnTouch } from './touch.ts';

/**
 * At which steps each touch means something. Stop, interrupt and their takings-back stand outside
 * the line: Stop wins at every step of an open turn, also where one stands that may be taken back.
 */
const AT: Record<TurnTouch['do'], readonly Step[]> = {
  identify: ['who'],
  willing: ['willing'],
  'open-kit': ['kit'],
  'contents-right': ['check'],
  'read-label': ['label-tube', 'label-bag'],
  'choose-way': ['ready'],
  'start-site': ['ready'],
  'next-site': ['swab'],
  out: ['swab'],
  'lid-dry': ['lid'],
  sealed: ['bag'],
  'kit-fault': ['check', 'label-tube', 'label-bag', 'ready', 'swab', 'lid', 'bag', 'settled'],
  stop: [
    'who',
    'willing',
    'kit',
    'check',
    'label-tube',
    'label-bag',
    'ready',
    'swab',
    'lid',
    'bag',
    'settled',
    'stopped',
    'interrupted',
  ],
  'stop-mistaken': ['stopped', 'lid', 'bag', 'settled'],
  'explain-stop': ['stopped', 'lid', 'bag', 'settled', 'ended'],
  interrupt: [
    'who',
    'willing',
    'kit',
    'check',
    'label-tube',
    'label-bag',
    'ready',
    'swab',
    'lid',
    'bag',
  ],
  resume: [
    'interrupted',
    'who',
    'willing',
    'kit',
    'check',
    'label-tube',
    'label-bag',
    'ready',
    'swab',
    'lid',
    'bag',
  ],
  finish: ['kit', 'stopped', 'settled'],
};

/**
 * The recorder's tablet as one pure machine: a touch, the home as its facts tell it, and the clock
 * in; facts to store, or plain words why not, out. The step shown next follows from the facts.
 */
export function decideTouch(
  home: Home,
  touch: Touch & { turn?: Turn['id'] },
  doing: Doing,
): Outcome {
  if (touch.do === 'start') return start(home, touch, doing);
  const turn = touch.turn === undefined ? undefined : turnOf(home, touch.turn);
  if (turn === undefined) return refuse({ reason: 'turn-ended' });
  const test = testInHand(home, turn);
  const step = stepOf(turn, test);
  if (!AT[touch.do].includes(step)) {
    return refuse(step === 'ended' ? { reason: 'turn-ended' } : { reason: 'not-this-step', step });
  }
  // Stop is never turned away for being tapped on the wrong tablet.
  const moves = touch.do !== 'resume' && touch.do !== 'stop' && touch.do !== 'explain-stop';
  if (moves && turn.device !== doing.device)
    return refuse({ reason: 'on-another-tablet', turn: turn.id });
  return within(home, turn, test, { touch: { ...touch, turn: turn.id }, doing });
}

function within(
  home: Home,
  turn: Turn,
  test: Test | undefined,
  how: { touch: TurnTouch; doing: Doing },
): Outcome {
  const { touch, doing } = how;
  switch (touch.do) {
    case 'identify':
      return identify(home, turn, touch, { test, doing });
    case 'willing':
      return willing(home, turn, touch, test);
    case 'open-kit':
      return openKit(home, turn, touch, doing);
    case 'stop':
      return stop(turn, test, doing);
    case 'stop-mistaken':
      return stopMistaken(turn, doing);
    case 'explain-stop':
      return explainStop(turn, touch);
    case 'interrupt':
      return interrupt(turn, touch);
    case 'resume':
      return resume(home, turn, test, { touch, doing });
    case 'finish':
      return finish(turn, test, touch);
    default:
      if (test === undefined) return refuse({ reason: 'not-this-step', step: 'kit' });
      return withKit(home, turn, test, { touch, doing });
  }
}

type KitTouch = Extract<
  TurnTouch,
  {
    do:
      | 'contents-right'
      | 'read-label'
      | 'choose-way'
      | 'start-site'
      | 'next-site'
      | 'out'
      | 'lid-dry'
      | 'sealed'
      | 'kit-fault';
  }
>;

function withKit(
  home: Home,
  turn: Turn,
  test: Test,
  { touch, doing }: { touch: KitTouch; doing: Doing },
): Outcome {
  switch (touch.do) {
    case 'contents-right':
      return seen('kit.checked', test, touch);
    case 'read-label':
      return readLabel(home, test, touch, doing);
    case 'choose-way':
      return chooseWay(home, turn, test, { touch, doing });
    case 'start-site':
      return startSite(home, turn, test, doing);
    case 'next-site':
      return nextSite(home, turn, test, { touch, doing });
    case 'out':
      return out(home, turn, test, { touch, doing });
    case 'lid-dry':
      return seen('tube.closed', test, touch);
    case 'sealed':
      return seen('tube.sealed', test, touch);
    case 'kit-fault':
      return kitFault(turn, test, touch);
  }
}

/** T4, T8, T9: somebody looked and says what they saw. Tapped within 2 s it is marked so. */
const seen = (
  kind: 'kit.checked' | 'tube.closed' | 'tube.sealed',
  test: Test,
  { turn, quick }: { turn: Turn['id']; quick?: true },
): Outcome => allow([{ kind, data: { turn, test: test.id, ...(quick && { quick }) } }]);

/** The end of a turn. A kit still open after a stop is closed for ever with it. */
function finish(
  turn: Turn,
  test: Test | undefined,
  touch: Extract<TurnTouch, { do: 'finish' }>,
): Outcome {
  const sealed = test?.sealed !== undefined;
  const facts: NewFact[] = sealed ? [] : spoilOpen(turn, test);
  const end = sealed ? 'taken' : turn.stop !== undefined ? 'stopped' : 'kit-fault';
  const mood = touch.mood === undefined ? {} : { mood: touch.mood };
  return allow([...facts, { kind: 'turn.closed', data: { turn: turn.id, end, ...mood } }]);
}
