import type { JSX } from 'preact';
import type { Fact } from '../../../care/catalogue.ts';
import type { Told } from '../../../care/rounds/story.ts';
import { useDesk } from '../../desk/desk.ts';
import { signedBy } from '../../desk/names.ts';
import { tellFact } from '../../desk/tell/tell-fact.ts';
import { DataTable } from '../../pieces/list/data-table.tsx';
import { useWords } from '../../words/use-words.ts';
import { journeyOf, notesOf } from './told-line.tsx';

/** Enough signs of a fact's id (60 bits) to find it again and to tell it from any other. */
const ID_SIGNS = 10;

/** All that happened, a row a record, oldest first; what was put right is struck through and stays. */
export function EvidenceRows({ told }: { readonly told: readonly Told[] }): JSX.Element {
  const desk = useDesk();
  const words = useWords();
  const { testPage, facts, dates } = words;
  const say = testPage.evidence;
  // On paper there is no "this tablet".
  const onPaper = { ...desk, device: '' };
  // What has not reached the server is counted below the table; only a late arrival is said here.
  const late = (fact: Fact): string[] =>
    desk.reached(fact) === undefined ? [] : journeyOf(fact, onPaper, words);
  const columns = [
    { key: 'at', label: say.columns.at, cell: ({ fact }: Told) => dates.dayTime(fact.at) },
    {
      key: 'what',
      label: say.columns.what,
      cell: ({ fact, replaced }: Told) => {
        const text = tellFact(fact, { home: desk.home, words });
        return (
          <>
            {replaced ? <s>{text}</s> : text} {replaced && <b>{facts.replaced}</b>}{' '}
            {[...notesOf(fact, onPaper, words), ...late(fact)].join(' ')}
          </>
        );
      },
    },
    {
      key: 'who',
      label: say.columns.who,
      cell: ({ fact }: Told) => signedBy(fact, desk.home, words),
    },
    {
      key: 'id',
      label: say.columns.id,
      cell: ({ fact }: Told) => <code>{fact.id.slice(0, ID_SIGNS)}</code>,
    },
  ];
  return (
    <section>
      <h2>{testPage.story}</h2>
      <DataTable
        caption={say.recordsNote}
        columns={columns}
        rows={told}
        rowKey={({ fact }) => fact.id}
      />
    </section>
  );
}
