import type { JSX } from 'preact';
import { Dialog } from '../../pieces/page/dialog.tsx';
import type { TabletState } from '../../tablet/state.ts';
import type { Tablet } from '../../tablet/tablet.ts';
import { useWords } from '../../words/use-words.ts';
import { SignInForm } from './sign-in-form.tsx';

export interface HandsDialogProps {
  readonly tablet: Tablet;
  readonly state: TabletState;
  readonly open: boolean;
  readonly onClose: () => void;
}

/** Another colleague takes the tablet; whatever is on the screen stays. */
export function HandsDialog({ tablet, state, open, onClose }: HandsDialogProps): JSX.Element {
  const { hands } = useWords().door;
  const others = state.known.filter(({ staff }) => staff !== state.who?.staff);
  return (
    <Dialog open={open} title={hands.title} onClose={onClose}>
      <p>{hands.body}</p>
      <SignInForm tablet={tablet} known={others} onDone={onClose} />
    </Dialog>
  );
}
