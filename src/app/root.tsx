import type { JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { App } from './app.tsx';
import type { DeskStore } from './desk/use-desk-store.ts';
import { ClockScreen } from './screens/door/clock-screen.tsx';
import { DoorFrame } from './screens/door/door-frame.tsx';
import { ElsewhereScreen } from './screens/door/elsewhere-screen.tsx';
import { EnrolScreen } from './screens/door/enrol-screen.tsx';
import { HandsDialog } from './screens/door/hands-dialog.tsx';
import { SignInScreen } from './screens/door/sign-in-screen.tsx';
import type { TabletState } from './tablet/state.ts';
import type { Tablet } from './tablet/tablet.ts';
import { useWords } from './words/use-words.ts';

export interface RootProps {
  readonly tablet: Tablet;
  /** The desk of an open tablet; made once it is open. */
  readonly openDesk: (hands: () => void) => Promise<DeskStore>;
}

/** Whatever the tablet's state asks for: set up, sign in, check the clock, or the app itself. */
export function Root({ tablet, openDesk }: RootProps): JSX.Element {
  const { door } = useWords();
  const state = useTabletState(tablet);
  const [hands, setHands] = useState(false);
  const store = useOpenDesk(state.stage, () => openDesk(() => setHands(true)));
  switch (state.stage) {
    case 'not-enrolled':
      return <EnrolScreen tablet={tablet} />;
    case 'locked':
      return <SignInScreen tablet={tablet} state={state} />;
    case 'elsewhere':
      return <ElsewhereScreen tablet={tablet} />;
    case 'starting':
      return <DoorFrame title={door.starting}>{null}</DoorFrame>;
    case 'open':
      break;
  }
  if (state.clock !== undefined) {
    return <ClockScreen tablet={tablet} zone={state.rules?.zone ?? 'UTC'} />;
  }
  if (store === undefined) return <DoorFrame title={door.starting}>{null}</DoorFrame>;
  return (
    <>
      <App store={store} />
      <HandsDialog tablet={tablet} state={state} open={hands} onClose={() => setHands(false)} />
    </>
  );
}

function useTabletState(tablet: Tablet): TabletState {
  const [state, setState] = useState(tablet.state.get());
  useEffect(() => {
    setState(tablet.state.get());
    return tablet.state.subscribe(setState);
  }, [tablet]);
  return state;
}

/** Made once, when the tablet opens; a locked tablet begins the whole program anew. */
function useOpenDesk(
  stage: TabletState['stage'],
  open: () => Promise<DeskStore>,
): DeskStore | undefined {
  const [store, setStore] = useState<DeskStore | undefined>(undefined);
  const isOpen = stage === 'open';
  useEffect(() => {
    if (isOpen) void open().then(setStore);
    // `open` is made anew on each drawing; only the stage decides.
  }, [isOpen]);
  return store;
}
