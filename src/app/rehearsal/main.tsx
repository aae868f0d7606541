// Styles before the screens that use them.
import '../look/look.css';
import '../screens/more/first-theme.ts';

import { render } from 'preact';
import type { StaffId } from '../../care/ids.ts';
import { instantOf } from '../../care/time.ts';
import { App } from '../app.tsx';
import { english } from '../words/en.ts';
import { WordsProvider } from '../words/use-words.ts';
import { memoryDesk } from './memory-desk.ts';
import { standIn } from './stand-in.ts';

// `?me=` a demo colleague, `?at=` the instant the morning starts.
const query = new URLSearchParams(location.search);
const start = instantOf(Date.parse(query.get('at') ?? '2026-11-26T07:00:00.000Z'));
const me = (query.get('me') ?? 'jonahmarsh') as StaffId;
const words = english({ timeZone: 'Europe/London', person: 'resident' });
const root = document.getElementById('app');
if (root === null) throw new Error('no #app in index.html');

const store = memoryDesk({ me, start });
// For tests and for trying things in the console: the desk, with everything it can do, and a stand-in
// for the two at the bedside.
Object.assign(globalThis, { rehearsal: { ...store, ...standIn(store) } });

render(
  <WordsProvider value={words}>
    <App store={store} />
  </WordsProvider>,
  root,
);
