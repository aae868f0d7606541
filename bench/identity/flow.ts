import { typeEntry, typeStart } from '../../src/app/pieces/scan/type-twice.ts';
import type { PersonId, RoundId, TestId } from '../../src/care/ids.ts';
import type { How } from '../../src/care/kind.ts';
import { identityChoices } from '../../src/care/people/choices.ts';
import { outcomeOf } from '../../src/care/results/outcome.ts';
import type { Day } from '../../src/care/time.ts';
import { packBag } from '../../src/procedures/pack.ts';
import { recordResult } from '../../src/procedures/record-result.ts';
import { below, type Chance, uniform } from '../../src/statistics/random/chance.ts';
import { Trial } from '../../test/trial/home.ts';
import { kitCode, plan, startTurn, touch } from '../../test/trial/round.ts';
import type { Rates } from './assumptions.ts';
import { slip } from './slips.ts';
import type { Fate } from './ways.ts';
import { caught, FINE, UNDETECTED } from './ways.ts';

/** What goes wrong in one test; nothing where a field is absent. */
export interface Slips {
  /** Somebody else sits there. `asked`: the birthday was asked for, and they gave their own. */
  readonly wrongPerson?: { readonly asked: boolean };
  readonly misTap?: true;
  /** The sticker on this tube is the neighbour's; `both`: the neighbour's tube has this one's. */
  readonly mislabelled?: { readonly both: boolean };
  /** Which of the codes read at the bedside was typed wrong: spare label, tube, bag. */
  readonly typed?: { readonly place: number; readonly twice: boolean };
  readonly typedResult?: { readonly twice: boolean };
}

/** What happens in one test, drawn by the rates. Undefined where nothing at all goes wrong. */
export function drawSlips(rates: Rates, chance: Chance): Slips | undefined {
  const happens = (rate: number) => uniform(chance) < rate;
  if (happens(rates.wrongPerson)) return { wrongPerson: { asked: !happens(rates.fromMemory) } };
  if (happens(rates.misTap)) return { misTap: true };
  if (happens(rates.mislabelled)) return { mislabelled: { both: happens(rates.crossed) } };
  for (let place = 0; place < 3; place += 1) {
    if (happens(rates.typedAtBedside) && happens(rates.typingSlip)) {
      return { typed: { place, twice: happens(rates.sameSlipTwice) } };
    }
  }
  if (!happens(rates.typedResult) || !happens(rates.typingSlip)) return undefined;
  return { typedResult: { twice: happens(rates.sameSlipTwice) } };
}

/** A sticker, and whether a scan of it is really a scan of the sheet it came from. */
interface Read {
  readonly code: string;
  readonly how: How;
}

/**
 * Two people of a home, one after the other, through the program's own procedures, with what goes
 * wrong put in where hands and eyes come in. Tells what became of the first one's test.
 */
export function play(slips: Slips | undefined, rates: Rates, chance: Chance): Fate {
  if (slips?.typedResult?.twice === false && !slipsThrough(chance)) return caught('typing twice');
  const scene = setUp(chance);
  const first = takeOne(scene, 0, slips, rates);
  if (first.ended !== undefined) return first.ended;
  const crossing = slips?.mislabelled?.both === true ? slips : undefined;
  const second = takeOne(scene, 1, crossing, rates);
  if (second.ended !== undefined) return second.ended;
  return results(scene, slips);
}

/** A code typed wrong and then right, in the field that asks for it twice: does any code come out? */
function slipsThrough(chance: Chance): boolean {
  const code = kitCode(below(chance, 9_000_000));
  const once = typeEntry(typeStart, slip(code, chance), 4);
  return typeEntry(once.state, code, 4).code !== undefined;
}

interface Scene {
  readonly trial: Trial;
  readonly chance: Chance;
  readonly round: RoundId;
  readonly people: readonly [PersonId, PersonId];
  readonly codes: readonly [string, string];
  readonly tests: TestId[];
  /** What the laboratory will find on each tube. */
  readonly onTube: string[];
  /** The pair has scanned a sheet instead of a sticker before in this round. */
  proxied: boolean;
}

const BIRTHDAYS = ['1938-04-02', '1941-09-17', '1950-01-30', '1946-06-21', '1933-12-05'] as const;

function setUp(chance: Chance): Scene {
  const trial = new Trial();
  for (const name of ['Pia', 'Jonah']) trial.staff(name);
  const names = ['Aud Karrow', 'Bex Tolland', 'Cob Finmere', 'Dil Osgathe', 'Eda Whinlatter'];
  const [a, b] = names.map((name, i) => trial.person(name, BIRTHDAYS[i] ?? ''));
  if (a === undefined || b === undefined) throw new Error('two people are needed');
  const start = below(chance, 9_000_000);
  return {
    ...{ trial, chance, people: [a, b], round: plan(trial, [a, b]) },
    ...{ codes: [kitCode(start), kitCode(start + 1)], tests: [], onTube: [], proxied: false },
  };
}

const happens = (scene: Scene, rate: number) => uniform(scene.chance) < rate;

/** Does a touch and says where it was turned away, if it was. */
function attempt(scene: Scene, given: Parameters<typeof touch>[1]): string | undefined {
  const outcome = touch(scene.trial, given);
  if (!outcome.ok) return outcome.reason;
  for (const fact of scene.trial.must(outcome)) {
    if (fact.kind === 'kit.opened') scene.tests.push(fact.data.test);
    if (fact.kind === 'kit.spoiled') return fact.data.why;
    if (fact.kind === 'turn.closed' && fact.data.end === 'not-them') return 'not-them';
  }
  return undefined;
}

function takeOne(
  scene: Scene,
  who: 0 | 1,
  slips: Slips | undefined,
  rates: Rates,
): { readonly ended?: Fate } {
  const person = scene.people[who];
  const own = scene.codes[who];
  const wrong = slips?.mislabelled === undefined ? own : scene.codes[who === 0 ? 1 : 0];
  const bag = wrong !== own && happens(scene, rates.bagToo) ? wrong : own;
  const stickers = [own, wrong, bag];
  const turn = startTurn(scene.trial, scene.round, person);
  const chosen = pick(scene, turn, person, slips);
  if (attempt(scene, { do: 'identify', turn, chosen }) === 'not-them') {
    return { ended: slips?.misTap === true ? falseAlarm('blind choice') : caught('blind choice') };
  }
  attempt(scene, { do: 'willing', turn, answer: 'yes' });
  for (const step of [0, 1, 2]) {
    const typed = who === 0 && slips?.typed?.place === step ? slips.typed : undefined;
    const read = readCode(scene, { own, sticker: stickers[step] ?? own, typed, rates });
    if (typeof read === 'string') return { ended: caught(read) };
    const doing = step === 0 ? 'open-kit' : 'read-label';
    const refused = attempt(scene, { do: doing, turn, ...read });
    if (refused !== undefined) return { ended: caught(`${PLACES[step] ?? ''}: ${refused}`) };
    if (step === 0) attempt(scene, { do: 'contents-right', turn });
  }
  for (const touched of REST) attempt(scene, { ...touched, turn });
  scene.onTube.push(wrong);
  // At the pack table there is no sheet to scan instead.
  const packed = packBag(
    scene.trial.home,
    { round: scene.round, code: bag, how: 'scanned' },
    scene.trial.doing,
  );
  if (!packed.ok) return { ended: caught(`packing: ${packed.reason}`) };
  scene.trial.must(packed);
  return {};
}

const PLACES = ['spare label', 'scan of the tube', 'scan of the bag'];
const REST = [
  { do: 'start-site' },
  { do: 'next-site', ms: 10_200 },
  { do: 'out', ms: 12_100 },
  { do: 'lid-dry' },
  { do: 'sealed' },
  { do: 'finish' },
] as const;

const falseAlarm = (where: string): Fate => ({ fate: 'false-alarm', where });

/** Whom the recorder picks in the blind choice. */
function pick(
  { trial, chance, people }: Scene,
  turn: string,
  person: PersonId,
  slips: Slips | undefined,
): PersonId | 'none' {
  const choices = identityChoices(trial.home, person, { way: 'birthday', turn });
  const others = choices.filter((each) => each.id !== person);
  if (slips?.misTap === true) return others[below(chance, others.length)]?.id ?? 'none';
  if (slips?.wrongPerson?.asked !== true) return person;
  const present = people.find((each) => each !== person);
  return others.find((each) => each.id === present)?.id ?? 'none';
}

/**
 * What comes in when a label is read at one step: the sticker that is really there, the sheet scanned
 * in its stead, or what was typed. Text where typing twice caught it.
 */
function readCode(
  scene: Scene,
  at: {
    readonly own: string;
    readonly sticker: string;
    readonly typed: Slips['typed'];
    readonly rates: Rates;
  },
): Read | string {
  const { own, sticker, typed, rates } = at;
  if (typed !== undefined) {
    const once = slip(own, scene.chance);
    const again = typed.twice ? once : own;
    const { code } = typeEntry(typeEntry(typeStart, once, 4).state, again, 4);
    return code === undefined ? 'typing twice' : { code, how: 'typed-twice' };
  }
  if (sticker === own) return { code: own, how: 'scanned' };
  const proxy = happens(scene, scene.proxied ? rates.proxyAgain : rates.proxyScan);
  scene.proxied ||= proxy;
  return { code: proxy ? own : sticker, how: 'scanned' };
}

/** The laboratory reports what it finds on the tubes; the results are typed in by their codes. */
function results(scene: Scene, slips: Slips | undefined): Fate {
  const { trial, people, onTube } = scene;
  trial.at('09:00', '2026-03-05');
  for (const [i, code] of onTube.entries()) {
    const typed = i === 0 && slips?.typedResult !== undefined ? slip(code, scene.chance) : code;
    const named = people[scene.codes.indexOf(code)];
    const second = { is: 'born', value: BIRTHDAYS[named === people[0] ? 0 : 1] } as const;
    const outcome = recordResult(
      trial.home,
      {
        ...{ code: typed, how: 'typed-twice', outcome: i === 0 ? 'positive' : 'negative' },
        ...{ reported: '2026-03-05' as Day, second },
      },
      trial.doing,
    );
    if (!outcome.ok) return caught(`result: ${outcome.reason}`);
    trial.must(outcome);
    if (typed !== code) return caught('result: a code that nobody here has');
  }
  const states = scene.tests.map((test) => outcomeOf(trial.home, test));
  if (states.some(({ state }) => state === 'held')) return caught('result: held by a finding');
  if (states.some(({ state }) => state === 'waiting')) return caught('result: one is missing');
  const [first] = states;
  const right = first?.state === 'known' && first.result.data.outcome === 'positive';
  return right && slips?.wrongPerson === undefined ? FINE : UNDETECTED;
}
