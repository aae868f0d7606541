import type { JSX } from 'preact';
import type { Missing } from '../../tablet/missing.ts';
import { useWords } from '../../words/use-words.ts';
import { DoorFrame } from './door-frame.tsx';

/** This browser, or the way it was reached, cannot be a tablet: what is lacking, and what to do. */
export function MissingScreen({ missing }: { readonly missing: readonly Missing[] }): JSX.Element {
  const { door } = useWords();
  return (
    <DoorFrame title={door.missing.title}>
      <ul>
        {missing.map((what) => (
          <li key={what}>{door.missing[what]}</li>
        ))}
      </ul>
    </DoorFrame>
  );
}
