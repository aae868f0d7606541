import type { JSX } from 'preact';
import type { BadRow } from '../../../exchange/spreadsheets/row-problem.ts';
import { Button } from '../../pieces/form/button.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { PageHead } from '../page-head.tsx';
import { to } from '../paths.ts';
import { BadRows } from './bad-rows.tsx';
import type { AnyColumn, ListKind } from './list-kind.ts';

export interface DoneProps {
  readonly kind: Pick<ListKind<never>, 'kind' | 'back'>;
  readonly kept: number;
  readonly bad: readonly BadRow<AnyColumn>[];
}

/** What was kept; and what was not, so that it can be put right in the file. */
export function Done({ kind, kept, bad }: DoneProps): JSX.Element {
  const { importing } = useAllWords();
  const say = importing.done;
  return (
    <>
      <PageHead title={say.title(kept)}>
        <p>{bad.length > 0 ? say.rest : say.restNone}</p>
      </PageHead>
      <BadRows rows={bad} />
      <Button kind="main" href={to(kind.back)}>
        {importing.back[kind.kind]}
      </Button>
    </>
  );
}
