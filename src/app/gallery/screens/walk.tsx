import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { BedsideLayout } from '../../pieces/bedside/bedside-layout.tsx';
import { BigButton } from '../../pieces/bedside/big-button.tsx';
import { BlindChoice } from '../../pieces/bedside/blind-choice.tsx';
import { useWords } from '../../words/use-words.ts';
import { corwen, helps, stopsWhen, wire } from '../demo.ts';

const titles = [
  'Pick what you hear.',
  'Tip down, snap, lid.',
  'Seal the bag.',
  'Thank Cor.',
] as const;
const now = (): number => performance.now();

/** A turn that can be walked through, to try where the focus goes when a step changes. */
export function WalkScreen(): JSX.Element {
  const words = useWords();
  const [at, setAt] = useState(0);
  const step = String(at);
  const onward = (): void => setAt(at + 1);
  const shared = { step, now };
  return (
    <BedsideLayout
      person={corwen}
      facts={['Pia swabs. Jonah records.']}
      wire={wire(words, '***hooooo')}
      helps={helps}
      stopsWhen={stopsWhen}
      step={step}
      title={titles[at] ?? ''}
      onStop={() => setAt(0)}
      primary={
        at === 1 || at === 2 ? (
          <BigButton {...shared} onPress={onward}>
            {at === 1 ? 'Lid tight, dry' : 'Sealed'}
          </BigButton>
        ) : undefined
      }
    >
      {at === 0 && (
        <BlindChoice
          {...shared}
          question="When is your birthday?"
          options={['14 March', '2 June', '14 May', '30 November'].map((text) => ({
            key: text,
            text,
          }))}
          onPick={onward}
        />
      )}
    </BedsideLayout>
  );
}
