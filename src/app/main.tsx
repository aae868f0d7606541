import { render } from 'preact';
import './look/look.css';
import { EmptyState } from './pieces/page/empty-state.tsx';
import { PageShell } from './pieces/page/page-shell.tsx';
import { english } from './words/en.ts';
import { WordsProvider } from './words/use-words.ts';

const words = english({ timeZone: 'Europe/London', person: 'resident' });
const root = document.getElementById('app');
if (root === null) throw new Error('no #app in index.html');

render(
  <WordsProvider value={words}>
    <PageShell service="" nav={[]} who="" onLock={() => undefined} sync={{ kind: 'nothing' }}>
      <EmptyState title="Tallyround" />
    </PageShell>
  </WordsProvider>,
  root,
);
