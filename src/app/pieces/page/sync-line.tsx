import type { JSX } from 'preact';
import type { Words } from '../../words/en.ts';
import { useWords } from '../../words/use-words.ts';
import { Icon, type IconName } from '../icon/icon.tsx';
import type { SyncState } from './sync-state.ts';
import './sync-line.css';

const marks: Readonly<Record<SyncState['kind'], IconName>> = {
  nothing: 'tick',
  opening: 'clock',
  sent: 'tick',
  sending: 'sent',
  kept: 'kept',
  trouble: 'look',
};

function saySync(state: SyncState, { page }: Words): string {
  switch (state.kind) {
    case 'nothing':
      return page.sync.nothing;
    case 'opening':
      return page.sync.opening;
    case 'sent':
      return page.sync.sent(state.count);
    case 'sending':
      return page.sync.sending(state.count);
    case 'kept':
      return page.sync.kept(state.count);
    case 'trouble':
      return page.sync.trouble;
  }
}

/** "Kept here, 14 waiting": always in the same place, never in the way. */
export function SyncLine({ state }: { readonly state: SyncState }): JSX.Element {
  const words = useWords();
  const lastMet = 'lastMet' in state ? state.lastMet : undefined;
  return (
    <p class="sync-line" data-kind={state.kind} role="status">
      <Icon name={marks[state.kind]} />
      <span>
        {saySync(state, words)}
        {lastMet !== undefined && <span class="sync-met"> {words.page.sync.lastMet(lastMet)}</span>}
      </span>
    </p>
  );
}
