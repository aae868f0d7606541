import type { JSX } from 'preact';
import type { Code } from '../../../care/kind.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Disclosure } from '../../pieces/page/disclosure.tsx';
import { CodeText } from '../../pieces/scan/code-text.tsx';
import { useAllWords } from '../../words/use-all-words.ts';

export interface ScannedCodesProps {
  readonly codes: readonly Code[];
  readonly onOut: (code: Code) => void;
}

/** Every code of a delivery, the latest first; one that does not belong can be taken out. */
export function ScannedCodes({ codes, onOut }: ScannedCodesProps): JSX.Element | null {
  const { supplies, scan } = useAllWords();
  const say = supplies.unpack;
  if (codes.length === 0) return null;
  return (
    <Disclosure title={say.list(codes.length)}>
      <ul class="scanned-codes">
        {codes.toReversed().map((code) => (
          <li key={code}>
            <CodeText code={code} />
            <Button kind="quiet" onPress={() => onOut(code)} label={say.outCode(scan.spell(code))}>
              {say.out}
            </Button>
          </li>
        ))}
      </ul>
    </Disclosure>
  );
}
