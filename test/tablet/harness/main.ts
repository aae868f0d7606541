import { openTablet } from '../../../src/app/tablet/open-tablet.ts';
import type { Tablet } from '../../../src/app/tablet/tablet.ts';
import { FORMAT } from '../../../src/care/catalogue.ts';
import { emptyHome, file, type Home } from '../../../src/care/home.ts';
import type { LedgerFact } from '../../../src/ledger/fact.ts';
import type { Fold } from '../../../src/ledger/fold.ts';
import { pureHash } from '../../../src/ledger/hash.ts';
import { aesCipher, importTabletKey } from '../../../src/ledger/stores/browser/cipher.ts';
import { BrowserStore } from '../../../src/ledger/stores/browser/store.ts';

/** A clock that tests can set. Kept where a reload finds it. */
const CLOCK = 'harness-clock-off';
const clockOff = () => Number(sessionStorage.getItem(CLOCK) ?? '0');

const tablet: Tablet = await openTablet(
  {
    now: () => Date.now() + clockOff(),
    monotonic: () => performance.now(),
    random: (bytes) => crypto.getRandomValues(new Uint8Array(bytes)),
    hash: pureHash,
    format: Number(new URLSearchParams(location.search).get('format') ?? FORMAT),
    cipher: async (key, owner) => aesCipher(await importTabletKey(key), owner),
    openStore: (options) => BrowserStore.open(options),
    reload: () => location.reload(),
  },
  // The least that Argon2 takes, but for the one test that says otherwise.
  location.search.includes('dear') ? {} : { wrapCost: { memory: 1024, time: 1 } },
);

/** Names by fact, as the smallest thing that can be folded. */
const names: Fold<Map<string, string>> = {
  fold: 1,
  initial: () => new Map(),
  evolve: (state, fact) => {
    const { value } = (fact.private ?? {}) as { value?: string };
    return value === undefined ? state : state.set(fact.id, value);
  },
  first: {
    over: new Set(),
    recent: 0,
    encode: (state) => JSON.stringify([...state]),
    decode: (text) => new Map(JSON.parse(text) as [string, string][]),
  },
  digest: (state) => JSON.stringify([...state].sort()),
};

const harness = {
  tablet,
  names: async () => {
    const followed = await tablet.follow(names, (fact: LedgerFact) => ({ ok: true, fact }));
    return [...followed.get().values()].sort();
  },
  setClock: (off: number) => sessionStorage.setItem(CLOCK, String(off)),
  home: (): Home => emptyHome({ zone: 'Europe/London', policies: [] }),
  file,
};
export type Harness = typeof harness;
Object.assign(globalThis, { harness });

const shown = document.getElementById('state');
const show = () => {
  if (shown) shown.textContent = JSON.stringify(tablet.state.get(), null, 2);
};
tablet.state.subscribe(show);
show();
