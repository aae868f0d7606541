import type { JSX } from 'preact';
import type { Entry } from '../../../care/record/history.ts';
import { useDesk } from '../../desk/desk.ts';
import { namesIn } from '../../desk/names.ts';
import { Button } from '../../pieces/form/button.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { to } from '../paths.ts';
import type { SaidEntry, Telling } from './say-entry.ts';
import { sayEntry } from './say-entry.ts';
import './history.css';

export interface HistoryListProps {
  readonly entries: readonly Entry[];
  readonly of: Telling['of'];
  /** Where an entry can be struck out, if it can. */
  readonly strikeAt?: (entry: Entry) => string | undefined;
}

/** Every entry of a record, newest first: what, by whom, when, and what it stands in for. */
export function HistoryList({ entries, of, strikeAt }: HistoryListProps): JSX.Element {
  return (
    <ol class="history">
      {entries.map((entry) => (
        <HistoryLine key={entry.fact.id} entry={entry} of={of} strike={strikeAt?.(entry)} />
      ))}
    </ol>
  );
}

interface HistoryLineProps {
  readonly entry: Entry;
  readonly of: Telling['of'];
  readonly strike: string | undefined;
}

function HistoryLine({ entry, of, strike }: HistoryLineProps): JSX.Element {
  const desk = useDesk();
  const words = useAllWords();
  const { history } = words;
  const { fact, replaces, replacesUnseen, replacedBy } = entry;
  const said = sayEntry(fact, { desk, words, of });
  const gone = replacedBy.length > 0;
  const names = namesIn(desk.home, words.refusals.somebody);
  return (
    <li data-gone={gone}>
      <p>
        <b>{said.what}</b> {gone ? <s>{said.value}</s> : said.value}{' '}
        {gone && <span class="history-gone">{history.noLonger}</span>}
      </p>
      {replaces.map((old) => (
        <p key={old.id} class="soft">
          {history.insteadOf(instead(sayEntry(old, { desk, words, of }), said))}
        </p>
      ))}
      {replacesUnseen > 0 && <p class="soft">{history.insteadUnseen(replacesUnseen)}</p>}
      <p class="soft">{history.byAt(names.staff(fact.by), fact.at)}</p>
      {strike !== undefined && (
        <Button kind="quiet" href={to(strike)} label={history.strikeThis(said.what)}>
          {history.strike}
        </Button>
      )}
    </li>
  );
}

/** Of the same thing only the value is told again. */
const instead = (old: SaidEntry, now: SaidEntry): string =>
  old.what === now.what ? old.value : `${old.what} ${old.value}`;
