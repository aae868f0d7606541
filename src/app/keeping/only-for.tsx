import type { ComponentChildren, JSX } from 'preact';
import type { Role } from '../../care/staff/facts.ts';
import { mayAs, useDesk } from '../desk/desk.ts';
import { Button } from '../pieces/form/button.tsx';
import { Notice } from '../pieces/list/notice.tsx';
import { PageHead } from '../screens/page-head.tsx';
import { to } from '../screens/paths.ts';
import { useWords } from '../words/use-words.ts';

export interface OnlyForProps {
  readonly role: Exclude<Role, 'worker'>;
  readonly title: string;
  readonly back: string;
  readonly children: ComponentChildren;
}

/** A form that takes a senior or a manager: anybody else is told whom to fetch before they type. */
export function OnlyFor({ role, title, back, children }: OnlyForProps): JSX.Element {
  const desk = useDesk();
  const { refusals, keeping } = useWords();
  if (mayAs(desk, role)) return <>{children}</>;
  return (
    <>
      <PageHead title={title} />
      <Notice
        kind="note"
        title={role === 'manager' ? refusals.needsManager : refusals.needsSenior}
        action={<Button href={to(back)}>{keeping.backOnly}</Button>}
      />
    </>
  );
}
