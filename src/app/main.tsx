// First: it fixes the order of the style layers before any piece brings its own.
import './look/look.css';
import './screens/more/first-theme.ts';

import { render } from 'preact';
import { carriedPolicies } from '../../policies/carried.ts';
import { FORMAT } from '../care/catalogue.ts';
import { idFromBytes } from '../care/ids.ts';
import { pureHash } from '../ledger/hash.ts';
import { aesGcm } from '../ledger/stores/browser/aes-gcm.ts';
import { openBrowserStore } from '../ledger/stores/browser/open.ts';
import { tabletStore } from './desk/tablet-store.ts';
import { Root } from './root.tsx';
import { openTablet } from './tablet/open-tablet.ts';
import { english } from './words/en.ts';
import { WordsProvider } from './words/use-words.ts';

const random = (bytes: number) => crypto.getRandomValues(new Uint8Array(bytes));
const monotonic = () => performance.now();
