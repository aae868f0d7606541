import type { JSX } from 'preact';
import { testNamed } from '../../../procedures/record-result.ts';
import { useDesk } from '../../desk/desk.ts';
import type { ScanWay } from '../../pieces/scan/scan-field.tsx';
import { ScanField } from '../../pieces/scan/scan-field.tsx';
import { useWords } from '../../words/use-words.ts';
import { howOf } from '../how-of.ts';
import type { Entry } from './entry.ts';
import { StepHead } from './step-head.tsx';

/** The code alone says whose result it is: nobody is picked from a list. */
export function EnterCode({ onEntry }: { readonly onEntry: (entry: Entry) => void }): JSX.Element {
  const { home } = useDesk();
  const { entry: say } = useWords().results;
  const read = (code: string, way: ScanWay): void => {
    const coded = { code, how: howOf(way), named: testNamed(home, code) };
    onEntry({ step: coded.named === undefined ? 'unknown' : 'second', coded });
  };
  return (
    <>
      <StepHead title={say.scan} first />
      <p>{say.scanWhy}</p>
      <ScanField onCode={read} />
    </>
  );
}
