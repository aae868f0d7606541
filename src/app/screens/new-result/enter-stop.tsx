import type { JSX } from 'preact';
import { before as standingOn } from '../../../care/results/counting.ts';
import { useDesk } from '../../desk/desk.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { CodeText } from '../../pieces/scan/code-text.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import type { At, Entry } from './entry.ts';
import { StepHead } from './step-head.tsx';

/** It does not fit, and no name is shown. Read it again, or keep it as doubtful: nobody acts on it then. */
export function EnterStop({
  at,
  onEntry,
}: {
  readonly at: At<'stop'>;
  readonly onEntry: (entry: Entry) => void;
}): JSX.Element {
  const { home } = useDesk();
  const { entry: say } = useAllWords().results;
  const { coded, printed } = at;
  const before = coded.named !== undefined && standingOn(home, coded.named.test).length > 0;
  return (
    <>
      <StepHead title={say.stop} />
      <Notice kind="stop" title={printed ? say.stopWhy : say.nothingElse}>
        {say.stopHow}
      </Notice>
      <p class="entry-code">
        <CodeText code={coded.code} />
      </p>
      <div class="button-row">
        <Button kind="main" icon="scan" onPress={() => onEntry({ step: 'code' })}>
          {say.scanAgain}
        </Button>
        <Button onPress={() => onEntry({ step: 'second', coded })}>{say.readAgain}</Button>
      </div>
      <div class="entry-doubt">
        <Button
          icon="look"
          onPress={() => onEntry({ step: 'outcome', coded, second: undefined, corrects: false })}
        >
          {say.doubtful}
        </Button>
        <p class="field-hint">
          {say.doubtfulWhy} {before && say.before}
        </p>
      </div>
    </>
  );
}
