import type { JSX } from 'preact';
import { BedsideLayout, type BedsideLayoutProps } from '../../pieces/bedside/bedside-layout.tsx';
import { useWords } from '../../words/use-words.ts';
import { corwen, helps, stopsWhen, wire } from '../demo.ts';
import { turns } from './turns.tsx';

export const turnStates = Object.keys(turns);

/** One state of Cor's turn. */
export function TurnScreen({ state }: { readonly state: string }): JSX.Element {
  const words = useWords();
  const turn = turns[state];
  if (turn === undefined) return <p>No such state.</p>;
  const { drawing, stopped = false, ...step } = turn;
  const props: BedsideLayoutProps = {
    person: corwen,
    facts: ['Another Vale lives here. Check with care.', 'Pia swabs. Jonah records.'],
    wire: wire(words, drawing),
    helps,
    stopsWhen,
    step: state,
    onStop: stopped ? undefined : () => undefined,
    sync: { kind: 'kept', count: 14 },
    ...step,
  };
  return <BedsideLayout {...props} />;
}
