import type { Fact, Kind } from '../care/catalogue.ts';
import { catalogue, isKind, readFact } from '../care/catalogue.ts';
import { timesOf } from '../care/custody/paper.ts';
import type { Home, Service } from '../care/home.ts';
import { emptyHome, fileRead } from '../care/home.ts';
import type { Instant } from '../care/time.ts';
import { HOUR, ms } from '../care/time.ts';
import type { LedgerFact } from '../ledger/fact.ts';
import type { Fold } from '../ledger/fold.ts';
import type { Reader } from '../ledger/upcast.ts';

/**
 * Rises whenever the same facts would be read or filed otherwise: with the catalogue, whose print a
 * test compares, and with what the first look holds.
 */
export const HOME_FOLD = 6;

/** How far back the first look goes: past the longest usual round and every wait for a result. */
const RECENT = 45 * 24 * HOUR;

/** What happened once in a round, and is over; facts of every other kind say what still holds. */
const OVER: ReadonlySet<string> = new Set<Kind>([
  ...(['round.planned', 'round.listed', 'round.closed'] as const),
  ...(['box.started', 'box.closed', 'box.handed', 'courier.missed', 'courier.rebooked'] as const),
  ...(['turn.opened', 'turn.stopped', 'turn.interrupted', 'turn.resumed', 'turn.closed'] as const),
  ...(['identity.established', 'identity.lapsed', 'willingness.seen'] as const),
  ...(['stop.mistaken', 'stop.explained', 'preparation.done', 'tablet.touched'] as const),
  ...(['tablet.wiped', 'kit.opened', 'kit.checked', 'kit.spoiled', 'label.read'] as const),
  ...(['way.chosen', 'site.started', 'site.ended', 'swab.taken', 'tube.closed'] as const),
  ...(['tube.sealed', 'bag.packed', 'test.registered', 'registration.failed'] as const),
  ...(['result.recorded', 'result.chased', 'action.named', 'action.done', 'letter.made'] as const),
  'settled',
]);

/**
 * The home as a fold of the ledger. Its state is the set of facts itself; everything concluded from
 * them is worked out again.
 */
export const homeFold = (service: Service): Fold<Home, Fact> => ({
  fold: HOME_FOLD,
  initial: () => emptyHome(service),
  evolve: (home, fact) => {
    fileRead(home, fact);
    return home;
  },
  first: {
    over: OVER,
    recent: RECENT,
    encode: (home) => JSON.stringify(recentOf(home)),
    decode: (text) => {
      const home = emptyHome(service);
      for (const fact of JSON.parse(text) as Fact[]) fileRead(home, fact);
      return home;
    },
  },
  digest: digestOf,
});

function recentOf(home: Home): Fact[] {
  let last = '';
  for (const { at } of home.known.values()) if (at > last) last = at;
  const from = last === '' ? 0 : ms(last as Fact['at']) - RECENT;
  return [...home.known.values()].filter(({ kind, at }) => !OVER.has(kind) || ms(at) >= from);
}

/** The facts as they were read, whether each has its private part, and every bag in its order. */
function digestOf(home: Home): string {
  const facts = [...home.known.values()].map(
    ({ id, data, private: hidden }) =>
      `${id}${hidden === undefined ? '' : '+'} ${JSON.stringify(data)}`,
  );
  const bags = [...home.shelves].flatMap(([shelf, keys]) =>
    [...keys].map(([key, bag]) => `${shelf} ${key} ${bag.facts.map((fact) => fact.id).join(' ')}`),
  );
  return [...facts.sort(), ...bags.sort()].join('\n');
}

/** Reads a stored fact as the domain knows it; no kind has an older version yet. */
export const readStored: Reader<Fact> = (stored, read = false) => {
  if (!isKind(stored.kind)) return { ok: false, reason: 'unknown-kind' };
  if (stored.v > catalogue[stored.kind].v) return { ok: false, reason: 'newer-version' };
  const plain = bare(stored);
  // A private part is looked at each time: its fact is read without it, so nobody noted that.
  if (read && stored.private === undefined) return { ok: true, fact: plain as unknown as Fact };
  const fact = readFact(plain as Parameters<typeof readFact>[0]);
  return fact === undefined ? { ok: false, reason: 'bad-data' } : { ok: true, fact };
};

/** What the core needs of a stored fact: who, with whom, when, where, and what. */
function bare(stored: LedgerFact): object {
  const { id, kind, data, by, device, seq } = stored;
  const times = timesOf(stored.at as string as Instant, data);
  const plain: Record<string, unknown> = { id, kind, data, ...times, by, device, seq };
  if (stored.with.length > 0) plain['with'] = stored.with;
  if (stored.private !== undefined) plain['private'] = stored.private;
  return plain;
}
