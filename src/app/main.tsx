// Styles before the screens that use them.
import './look/look.css';
import './screens/more/first-theme.ts';

import { type JSX, render } from 'preact';
import { carriedPolicies } from '../../policies/carried.ts';
import { FORMAT } from '../care/catalogue.ts';
import { idFromBytes } from '../care/ids.ts';
import { pureHash } from '../ledger/hash.ts';
import { aesCipher, importTabletKey } from '../ledger/stores/browser/cipher.ts';
import { BrowserStore } from '../ledger/stores/browser/store.ts';
import { tabletStore } from './desk/tablet-store.ts';
import { Root } from './root.tsx';
import { MissingScreen } from './screens/door/missing-screen.tsx';
import { whatIsMissing } from './tablet/missing.ts';
import { openTablet } from './tablet/open-tablet.ts';
import { english } from './words/en.ts';
import { WordsProvider } from './words/use-words.ts';

const random = (bytes: number) => crypto.getRandomValues(new Uint8Array(bytes));
const monotonic = () => performance.now();

/** Opens the tablet of this browser and shows whatever its state asks for. */
async function begin(root: HTMLElement): Promise<void> {
  const missing = whatIsMissing();
  if (missing.length > 0) {
    show(root, <MissingScreen missing={missing} />, 'Europe/London');
    return;
  }
  const tablet = await openTablet({
    now: Date.now,
    monotonic,
    random,
    hash: pureHash,
    format: FORMAT,
    cipher: async (key, owner) => aesCipher(await importTabletKey(key), owner),
    openStore: (options) => BrowserStore.open(options),
    reload: () => location.reload(),
  });
  /** The service as the tablet was told when it was enrolled. */
  const rules = () => tablet.state.get().rules;
  const openDesk = (hands: () => void) =>
    tabletStore({
      tablet,
      hands,
      service: { zone: rules()?.zone ?? 'UTC', policies: carriedPolicies() },
      title: rules()?.title ?? '',
      monotonic,
      draw: () => idFromBytes(random(12)),
    });
  show(root, <Root tablet={tablet} openDesk={openDesk} />, rules()?.zone ?? 'Europe/London');
}

function show(root: HTMLElement, what: JSX.Element, timeZone: string): void {
  const words = english({ timeZone, person: 'resident' });
  render(<WordsProvider value={words}>{what}</WordsProvider>, root);
}

const root = document.getElementById('app');
if (root === null) throw new Error('no #app in index.html');
await begin(root);
