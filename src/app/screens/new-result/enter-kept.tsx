import type { JSX } from 'preact';
import { Button } from '../../pieces/form/button.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { paths, to } from '../paths.ts';
import type { Entry } from './entry.ts';
import { StepHead } from './step-head.tsx';

/** Kept, but nobody acts on it until a senior has settled what does not fit. */
export function EnterKept({ onEntry }: { readonly onEntry: (entry: Entry) => void }): JSX.Element {
  const { entry: say } = useAllWords().results;
  return (
    <>
      <StepHead title={say.keptHeld} />
      <div class="button-row">
        <Button kind="main" icon="look" href={to(paths.findings)}>
          {say.toSenior}
        </Button>
        <Button icon="scan" onPress={() => onEntry({ step: 'code' })}>
          {say.another}
        </Button>
      </div>
    </>
  );
}
