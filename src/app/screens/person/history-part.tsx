import type { JSX } from 'preact';
import { historyOf } from '../../../care/record/history.ts';
import { mayStrike } from '../../../procedures/strike-out.ts';
import { mayAs } from '../../desk/desk.ts';
import { Disclosure } from '../../pieces/page/disclosure.tsx';
import { Part } from '../../pieces/page/part.tsx';
import { HistoryList } from '../history/history-list.tsx';
import { paths } from '../paths.ts';
import type { PersonData } from './person-data.ts';

/** Who wrote what and when, and what it replaced. A senior may strike out what was never so. */
export function HistoryPart({ desk, words, person }: PersonData): JSX.Element {
  const entries = historyOf(desk.home, 'person', person.id);
  const senior = mayAs(desk, 'senior');
  return (
    <Part title={words.record.parts.history}>
      <Disclosure title={words.record.historyCount(entries.length)}>
        <HistoryList
          entries={entries}
          of="person"
          strikeAt={({ fact, replacedBy }) =>
            senior && mayStrike(fact.kind) && replacedBy.length === 0
              ? paths.strikeOut(person.id, fact.id)
              : undefined
          }
        />
      </Disclosure>
    </Part>
  );
}
