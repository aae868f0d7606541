import type { JSX } from 'preact';
import { Notice } from '../../pieces/list/notice.tsx';
import type { TabletState } from '../../tablet/state.ts';
import type { Tablet } from '../../tablet/tablet.ts';
import { useWords } from '../../words/use-words.ts';
import { DoorFrame } from './door-frame.tsx';
import { SignInForm } from './sign-in-form.tsx';

/** The locked tablet. */
export function SignInScreen({
  tablet,
  state,
}: {
  readonly tablet: Tablet;
  readonly state: TabletState;
}): JSX.Element {
  const { door } = useWords();
  return (
    <DoorFrame title={door.title}>
      {state.device !== undefined && <p>{door.tablet(state.device.name)}</p>}
      {state.problem !== undefined && (
        <Notice kind="look" title={door.problems[state.problem.kind]} />
      )}
      <SignInForm tablet={tablet} known={state.known} />
    </DoorFrame>
  );
}
