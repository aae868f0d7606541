import type { JSX } from 'preact';
import type { Box } from '../../../care/rounds/round.ts';
import { Notice } from '../../pieces/list/notice.tsx';
import { useAllWords } from '../../words/use-all-words.ts';

/** A box that has left: how many, when, with whom, under which seal. Two different counts are told. */
export function HandedBox({ box }: { readonly box: Box }): JSX.Element {
  const { handing: say, facts } = useAllWords();
  const counts = new Set(box.handed.map(({ data }) => data.count));
  return (
    <>
      {box.handed.map((handed) => (
        <p key={handed.id}>
          {say.handed(
            handed.data.count,
            handed.at,
            handed.private?.courier ?? facts.erased,
            handed.data.seal,
          )}
        </p>
      ))}
      {counts.size > 1 && <Notice kind="look" title={say.twice} />}
    </>
  );
}
