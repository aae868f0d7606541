import * as v from 'valibot';
import { boxId, factId, personId, roundId, staffId, testId, turnId } from '../ids.ts';
import { code, how, kind, line, replaces, word } from '../kind.ts';
import { day } from '../time.ts';
import { paper } from './paper.ts';

export const sites = ['throat', 'nostril-1', 'nostril-2'] as const;
export type Site = (typeof sites)[number];
const site = v.picklist(sites);

/** Why a kit was closed for ever without a tube to send. */
export const spoilReasons = [
  'contents-wrong',
  'labels-differ',
  'label-unreadable',
  'fluid-missing',
  'swab-touched',
  'shaft-broke',
  'leak',
  'stopped',
  'interrupted',
  'asked-not-to-send',
  'handed-over',
] as const;
export type SpoilReason = (typeof spoilReasons)[number];

/** Why somebody said, or showed, stop. `other` keeps the door open; none of them is ever required. */
export const stopReasons = [
  'said-no',
  'turned-away',
  'pushed-away',
  'mouth-shut',
  'gagging',
  'bleeding',
  'breath-holding',
  'seizure',
  'own-sign',
  'staff-judged',
  'other',
] as const;
export type StopReason = (typeof stopReasons)[number];

const seconds = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(600_000));
/** Codes nearly like a typed one, which a second person (in `with`) compared and ruled out. */
const near = v.exactOptional(v.array(code));
/** Set when the tap came under 2 s after the one before: the step may not have been watched. */
const quick = v.exactOptional(v.literal(true));
const turn = { turn: turnId };
const onTurn = (data: { turn: string }) => [['turn', data.turn]] as const;
const test = { turn: turnId, test: testId };
const onTest = (data: { turn: string; test: string }) =>
  [
    ['turn', data.turn],
    ['test', data.test],
  ] as const;

export const turnFacts = {
  /** Fresh gloves and apron are on; the pair has begun with this person. */
  'turn.opened': kind({
    data: {
      ...turn,
      round: roundId,
      person: personId,
      swabber: staffId,
      recorder: staffId,
      paper,
      replaces,
    },
    files: (data) => [
      ['turn', data.turn],
      ['round', data.round],
      ['person', data.person],
    ],
  }),
  /**
   * The blind choice: the birthday heard, or the face seen, picked among housemates. `chosen` is the
   * person whose birthday or face was picked, or `none`; anybody but the turn's person ends the turn.
   */
  'identity.established': kind({
    data: {
      ...turn,
      way: v.picklist(['birthday', 'face']),
      chosen: v.union([v.literal('none'), personId]),
      paper,
      replaces,
    },
    files: onTurn,
  }),
  /** Too long since the person was identified: it is asked again before the swab. */
  'identity.lapsed': kind({ data: { ...turn }, files: onTurn }),
  'willingness.seen': kind({
    data: {
      ...turn,
      answer: v.picklist(['yes', 'no', 'unsure', 'asleep', 'away']),
      /** Every earlier no and stop in this round that those who asked again knew of. */
      knowing: v.exactOptional(v.array(factId)),
      paper,
      replaces,
    },
    files: onTurn,
  }),
  'turn.stopped': kind({
    data: { ...turn, why: v.exactOptional(v.picklist(stopReasons)), paper, replaces },
    files: onTurn,
  }),
  /** Stop was pressed by mistake: the person did not ask for it. Willingness is asked again. */
  'stop.mistaken': kind({ data: { ...turn, replaces }, files: onTurn }),
  'stop.explained': kind({
    data: { ...turn, why: v.picklist(stopReasons), replaces },
    files: onTurn,
  }),
  'turn.interrupted': kind({
    data: {
      ...turn,
      why: v.picklist(['alarm', 'called-away', 'emergency', 'visitor', 'handed-over', 'other']),
    },
    files: onTurn,
  }),
  /** Taken up again, perhaps by others. `tube` is what became of an open kit meanwhile. */
  'turn.resumed': kind({
    data: {
      ...turn,
      swabber: staffId,
      recorder: staffId,
      tube: v.picklist(['none-open', 'lid-was-on', 'kept-safe', 'left-open']),
      again: v.picklist(['who', 'willing', 'nothing']),
      /** The last fact of the turn that was seen: orders the turn where two clocks might not. */
      after: factId,
    },
    files: onTurn,
  }),
  'turn.closed': kind({
    data: {
      ...turn,
      end: v.picklist([
        'taken',
        'declined',
        'not-now',
        'stopped',
        'not-them',
        'kit-fault',
        'interrupted',
      ]),
      mood: v.exactOptional(v.picklist(['calm', 'uneasy', 'distressed'])),
      paper,
      replaces,
    },
    files: onTurn,
  }),
};

export const testFacts = {
  /** The spare label was read: from here this kit and this code belong to this person's turn. */
  'kit.opened': kind({
    data: {
      ...test,
      code,
      how,
      near,
      kitKind: word,
      lot: v.exactOptional(word),
      expires: v.exactOptional(day),
      paper,
      replaces,
    },
    files: (data) => [...onTest(data), ['code', data.code], ['lot', data.kitKind]],
  }),
  'kit.checked': kind({ data: { ...test, quick, replaces }, files: onTest }),
  'label.read': kind({
    data: { ...test, place: v.picklist(['tube', 'bag']), code, how, near, paper, replaces },
    files: (data) => [...onTest(data), ['code', data.code]],
  }),
  /** Chosen when ready: no throat today (then both nostrils), or the person swabs themselves. */
  'way.chosen': kind({
    data: {
      ...test,
      sites: v.picklist(['throat-and-nose', 'nose-only']),
      taker: v.picklist(['staff', 'person']),
    },
    files: onTest,
  }),
  'site.started': kind({ data: { ...test, site }, files: onTest }),
  'site.ended': kind({ data: { ...test, site, ms: seconds }, files: onTest }),
  /** The swab came out, done. Sites and times are those of the dials that ran. */
  'swab.taken': kind({
    data: {
      ...test,
      taker: v.picklist(['staff', 'person']),
      /** `ms` is the dial's; a swab from paper had none. */
      sites: v.array(v.strictObject({ site, ms: v.exactOptional(seconds) })),
      short: v.exactOptional(v.picklist(['asked-to-finish', 'sore', 'blocked', 'other'])),
      paper,
      replaces,
    },
    files: onTest,
  }),
  'tube.closed': kind({ data: { ...test, quick, paper, replaces }, files: onTest }),
  'tube.sealed': kind({ data: { ...test, quick, paper, replaces }, files: onTest }),
  'kit.spoiled': kind({
    data: { ...test, why: v.picklist(spoilReasons), paper, replaces },
    files: onTest,
  }),
  'bag.packed': kind({
    data: { ...test, box: boxId, code, how, near, replaces },
    files: (data) => [...onTest(data), ['box', data.box], ['code', data.code]],
  }),
};

export const groupFacts = {
  /**
   * Another home of the group has used this code too, as its server said. `service` is its ledger's id;
   * what it calls itself is told only where its policy says so.
   */
  'code.elsewhere': kind({
    data: { code, service: word },
    private: { title: line },
    files: (data) => [['code', data.code]],
  }),
};

export const tabletFacts = {
  /** Used gloves touched the tablet; nobody's turn starts until it is wiped. */
  'tablet.touched': kind({ data: { round: roundId }, files: (data) => [['round', data.round]] }),
  'tablet.wiped': kind({
    data: { round: roundId, replaces },
    files: (data) => [['round', data.round]],
  }),
};
