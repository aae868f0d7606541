import type { JSX } from 'preact';
import type { Test } from '../../../care/custody/test.ts';
import { beadNames, wireOfTest } from '../../../care/rounds/frame.ts';
import { useDesk } from '../../desk/desk.ts';
import { namesIn } from '../../desk/names.ts';
import { Wire } from '../../pieces/frame/wire.tsx';
import { useWords } from '../../words/use-words.ts';

/** The whole wire of one test: large to head a page, small beside a line. */
export function TestWire({
  test,
  size = 'large',
}: {
  readonly test: Test;
  readonly size?: 'large' | 'small';
}): JSX.Element | null {
  const { home } = useDesk();
  const words = useWords();
  const wire = wireOfTest(home, test);
  if (wire === undefined) return null;
  return (
    <Wire
      size={size}
      name={namesIn(home, words.refusals.somebody).person(wire.person)}
      steps={beadNames.map((key) => ({
        key,
        label: words.frame.steps[key],
        state: wire.beads[key],
      }))}
    />
  );
}
