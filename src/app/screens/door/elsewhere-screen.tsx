import type { JSX } from 'preact';
import { Button } from '../../pieces/form/button.tsx';
import type { Tablet } from '../../tablet/tablet.ts';
import { useWords } from '../../words/use-words.ts';
import { DoorFrame } from './door-frame.tsx';

/** Another tab of this tablet is the one in use. */
export function ElsewhereScreen({ tablet }: { readonly tablet: Tablet }): JSX.Element {
  const { elsewhere } = useWords().door;
  return (
    <DoorFrame title={elsewhere.title}>
      <p>{elsewhere.body}</p>
      <Button kind="main" onPress={() => void tablet.useHere()}>
        {elsewhere.useHere}
      </Button>
    </DoorFrame>
  );
}
