import type { ComponentChildren, JSX } from 'preact';
import { useState } from 'preact/hooks';
import { todayOf, useDesk } from '../../desk/desk.ts';
import { Button } from '../../pieces/form/button.tsx';
import type { FormProblem } from '../../pieces/form/error-summary.tsx';
import { Steps } from '../../pieces/page/steps.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { PageHead } from '../page-head.tsx';
import { to } from '../paths.ts';
import { Done } from './done.tsx';
import type { ListKind } from './list-kind.ts';
import { openQuestions } from './open-questions.ts';
import { StepCheck } from './step-check.tsx';
import { StepColumns } from './step-columns.tsx';
import type { PickedFile } from './step-file.tsx';
import { StepFile } from './step-file.tsx';
import { useImport } from './use-import.ts';
import './import.css';

type Stage = 'columns' | 'check' | { readonly kept: number };

interface OfKind<Value extends { readonly name: string }> {
  readonly kind: ListKind<Value>;
}

/** A list of people or of staff, brought in from a spreadsheet in three steps. */
export function ImportScreen<Value extends { readonly name: string }>({
  kind,
}: OfKind<Value>): JSX.Element {
  const { importing: say } = useAllWords();
  const [file, setFile] = useState<PickedFile | undefined>(undefined);
  if (file !== undefined) {
    return <WithFile kind={kind} file={file} onOther={() => setFile(undefined)} />;
  }
  return (
    <>
      <StepHead title={say.titles[kind.kind]} step={0} />
      <StepFile kind={kind} onFile={setFile} />
      <div class="button-row">
        <Button kind="quiet" href={to(kind.back)}>
          {say.back[kind.kind]}
        </Button>
      </div>
    </>
  );
}

interface WithFileProps<Value extends { readonly name: string }> extends OfKind<Value> {
  readonly file: PickedFile;
  readonly onOther: () => void;
}

function WithFile<Value extends { readonly name: string }>(
  props: WithFileProps<Value>,
): JSX.Element {
  const { kind, file, onOther } = props;
  const words = useAllWords();
  const { importing: say } = words;
  const bringing = useImport(kind, file, todayOf(useDesk()));
  const [stage, setStage] = useState<Stage>('columns');
  const [tried, setTried] = useState(nothingTried);
  // Read again another way, the file may turn out to be no list at all.
  if (!bringing.ok) {
    return (
      <>
        <StepHead title={say.titles[kind.kind]} step={0} />
        <p>{say.file.bad[bringing.reason]}</p>
        <Button onPress={onOther}>{say.map.other}</Button>
      </>
    );
  }
  const { reading, told, questions, rows } = bringing;
  if (typeof stage === 'object') return <Done kind={kind} kept={stage.kept} bad={rows.bad} />;
  if (stage === 'check') {
    return (
      <>
        <StepHead key="check" title={say.check.title} step={2} />
        <StepCheck
          kind={kind}
          reading={reading}
          columns={kind.columns.filter((column) => told.columns[column] !== undefined)}
          rows={rows}
          onBack={() => setStage('columns')}
          onKept={(kept) => setStage({ kept })}
        />
      </>
    );
  }
  const next = () => {
    const problems = openQuestions(questions, told, words);
    setTried(({ attempt }) => ({ problems, attempt: attempt + 1 }));
    if (problems.length === 0) setStage('check');
  };
  return (
    <>
      <StepHead key="columns" title={say.map.title} step={1}>
        <p>{say.map.from(file.name)}</p>
      </StepHead>
      <StepColumns
        {...{ kind, reading, told, questions, tried, onOther }}
        onTold={bringing.tell}
        onPicked={bringing.pick}
        onNext={next}
      />
    </>
  );
}

const nothingTried: { readonly problems: readonly FormProblem[]; readonly attempt: number } = {
  problems: [],
  attempt: 0,
};

interface StepHeadProps {
  readonly title: string;
  readonly step: number;
  readonly children?: ComponentChildren;
}

function StepHead({ title, step, children }: StepHeadProps): JSX.Element {
  const { importing: say } = useAllWords();
  const { file, columns, check } = say.steps;
  return (
    <PageHead title={title}>
      <Steps name={say.stepsName} labels={[file, columns, check]} current={step} />
      {children}
    </PageHead>
  );
}
