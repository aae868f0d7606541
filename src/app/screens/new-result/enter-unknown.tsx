import type { JSX } from 'preact';
import { Button } from '../../pieces/form/button.tsx';
import { CodeText } from '../../pieces/scan/code-text.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import type { At, Entry } from './entry.ts';
import { StepHead } from './step-head.tsx';

/** A code nobody here used. It physically came, so it may be kept: then it is a finding. */
export function EnterUnknown({
  at,
  onEntry,
}: {
  readonly at: At<'unknown'>;
  readonly onEntry: (entry: Entry) => void;
}): JSX.Element {
  const { entry: say } = useAllWords().results;
  return (
    <>
      <StepHead title={say.unknown} />
      <p class="entry-code">
        <CodeText code={at.coded.code} />
      </p>
      <p>{say.unknownHow}</p>
      <div class="button-row">
        <Button kind="main" icon="scan" onPress={() => onEntry({ step: 'code' })}>
          {say.scanAgain}
        </Button>
        <Button
          onPress={() =>
            onEntry({ step: 'outcome', coded: at.coded, second: undefined, corrects: false })
          }
        >
          {say.keepUnknown}
        </Button>
      </div>
    </>
  );
}
