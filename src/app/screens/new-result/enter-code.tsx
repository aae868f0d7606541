import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { nearCodes } from '../../../care/custody/near-codes.ts';
import type { StaffId } from '../../../care/ids.ts';
import type { Code, How } from '../../../care/kind.ts';
import { testNamed } from '../../../procedures/record-result.ts';
import { useDesk } from '../../desk/desk.ts';
import { ScanField } from '../../pieces/scan/scan-field.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { howOf } from '../how-of.ts';
import { SecondReader } from '../parts/second-reader.tsx';
import type { Entry } from './entry.ts';
import { StepHead } from './step-head.tsx';

/** The code alone says whose result it is: nobody is picked from a list. */
export function EnterCode({ onEntry }: { readonly onEntry: (entry: Entry) => void }): JSX.Element {
  const { home } = useDesk();
  const words = useAllWords();
  const { entry: say } = words.results;
  /** A typed code that looks like another waits for a colleague to read it too. */
  const [near, setNear] = useState<string | undefined>(undefined);
  const read = (code: string, how: How, reader?: StaffId): void => {
    const looksAlike = nearCodes(home, code.trim() as Code).length > 0;
    if (how !== 'scanned' && reader === undefined && looksAlike) {
      setNear(code);
      return;
    }
    const named = testNamed(home, code);
    const coded = { code, how, named, ...(reader !== undefined && { reader }) };
    onEntry({ step: coded.named === undefined ? 'unknown' : 'second', coded });
  };
  return (
    <>
      <StepHead title={say.scan} first />
      <p>{say.scanWhy}</p>
      <ScanField
        onCode={(code, way) => {
          setNear(undefined);
          read(code, howOf(way));
        }}
        problem={near === undefined ? undefined : words.identity.codeNear(1)}
      />
      {near !== undefined && (
        <SecondReader
          key={near}
          code={near}
          onSecond={(reader) => read(near, 'typed-twice', reader)}
        />
      )}
    </>
  );
}
