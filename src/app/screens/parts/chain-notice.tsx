import type { JSX } from 'preact';
import { useDesk } from '../../desk/desk.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { useWords } from '../../words/use-words.ts';
import { paths, to } from '../paths.ts';

/** A tablet whose own records do not join up: somebody looks at it before it is forgotten. */
export function ChainNotice(): JSX.Element | null {
  const desk = useDesk();
  const { now: say } = useWords();
  // That another tablet carried records in is as it should be.
  if (desk.chainFindings().every(({ kind }) => kind === 'carried')) return null;
  return (
    <Notice
      kind="look"
      title={say.chainBroken}
      action={<Button href={to(paths.findings)}>{say.chainLook}</Button>}
    />
  );
}
