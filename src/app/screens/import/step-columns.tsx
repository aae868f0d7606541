import type { JSX } from 'preact';
import type { NameForm } from '../../../exchange/spreadsheets/people-list.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Choice } from '../../pieces/form/choice.tsx';
import type { FormProblem } from '../../pieces/form/error-summary.tsx';
import { ErrorSummary } from '../../pieces/form/error-summary.tsx';
import { Select } from '../../pieces/form/select.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { Part } from '../../pieces/page/part.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { DateAsk } from './date-ask.tsx';
import { HowRead } from './how-read.tsx';
import { JobAsk } from './job-ask.tsx';
import type { AnyColumn, ListKind, Told } from './list-kind.ts';
import type { Picked, Questions, Reading } from './reading.ts';
import { SampleRows } from './sample-rows.tsx';

export interface StepColumnsProps {
  readonly kind: Pick<ListKind<never>, 'columns' | 'kind'>;
  readonly reading: Reading;
  readonly told: Told;
  readonly questions: Questions;
  readonly tried: { readonly problems: readonly FormProblem[]; readonly attempt: number };
  readonly onTold: (told: Partial<Told>) => void;
  readonly onPicked: (picked: Picked) => void;
  readonly onNext: () => void;
  readonly onOther: () => void;
}

/** The second step: what each column holds, and whatever a file cannot say by itself. */
export function StepColumns(props: StepColumnsProps): JSX.Element {
  const { reading, questions, told, tried } = props;
  const { importing } = useAllWords();
  const say = importing.map;
  return (
    <>
      <ErrorSummary problems={tried.problems} attempt={tried.attempt} />
      {!reading.sure && (
        <Notice kind="look" title={say.unsure}>
          {say.unsureWhy(importing.encodings[reading.encoding])}
        </Notice>
      )}
      <HowRead reading={reading} onPicked={props.onPicked} />
      <SampleRows reading={reading} />
      <Part title={say.which}>
        <div class="import-columns">
          {props.kind.columns.map((column) => (
            <ColumnPick key={column} {...props} column={column} />
          ))}
        </div>
      </Part>
      {questions.dates !== undefined && (
        <DateAsk
          question={questions.dates}
          value={told.dateForm}
          problem={problemOf(tried, 'dates')}
          onValue={(dateForm) => props.onTold({ dateForm })}
        />
      )}
      {questions.commaName !== undefined && <NameAsk {...props} example={questions.commaName} />}
      {questions.jobs.map((word) => (
        <JobAsk
          key={word}
          word={word}
          value={told.roles.get(word)}
          problem={problemOf(tried, `job-${word}`)}
          onValue={(role) => props.onTold({ roles: new Map([...told.roles, [word, role]]) })}
        />
      ))}
      <div class="button-row">
        <Button kind="main" onPress={props.onNext}>
          {say.next}
        </Button>
        <Button kind="quiet" onPress={props.onOther}>
          {say.other}
        </Button>
      </div>
    </>
  );
}

const problemOf = ({ problems }: StepColumnsProps['tried'], field: string): string | undefined =>
  problems.find((problem) => problem.field === field)?.text;

function ColumnPick({
  column,
  reading,
  told,
  tried,
  onTold,
}: StepColumnsProps & { readonly column: AnyColumn }): JSX.Element {
  const { importing } = useAllWords();
  const { headings } = reading;
  const at = told.columns[column];
  return (
    <Select
      id={`column-${column}`}
      label={importing.columns[column]}
      none={importing.map.none}
      problem={problemOf(tried, `column-${column}`)}
      value={at === undefined ? '' : String(at)}
      onValue={(picked) => {
        const { [column]: _, ...rest } = told.columns;
        onTold({ columns: picked === '' ? rest : { ...rest, [column]: Number(picked) } });
      }}
      options={headings.cells.map((heading, i) => ({
        value: String(i),
        label: importing.map.option(i + 1, heading),
      }))}
    />
  );
}

function NameAsk({
  example,
  told,
  tried,
  onTold,
}: StepColumnsProps & { readonly example: string }): JSX.Element {
  const { importing } = useAllWords();
  const say = importing.map;
  const [family = '', given = ''] = example.split(',').map((part) => part.trim());
  return (
    <Choice<NameForm>
      id="names"
      label={say.nameAsk(example)}
      problem={problemOf(tried, 'names')}
      value={told.nameForm ?? ''}
      onValue={(nameForm) => onTold({ nameForm: nameForm === '' ? undefined : nameForm })}
      options={[
        { value: 'family-first', label: say.nameTurned(`${given} ${family}`) },
        { value: 'as-written', label: say.nameAsWritten },
      ]}
    />
  );
}
