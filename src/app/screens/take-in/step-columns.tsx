import type { JSX } from 'preact';
import { useMemo, useState } from 'preact/hooks';
import type { Outcome } from '../../../care/results/facts.ts';
import { outcomes } from '../../../care/results/facts.ts';
import { plainWord } from '../../../exchange/results/meaning-of-words.ts';
import type { ResultColumn } from '../../../exchange/results/told.ts';
import { resultColumns } from '../../../exchange/results/told.ts';
import type { DateForm } from '../../../exchange/spreadsheets/dates.ts';
import type { Columns } from '../../../exchange/spreadsheets/guess-columns.ts';
import { mappingOf } from '../../../procedures/take-in-results.ts';
import { useDesk } from '../../desk/desk.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Choice } from '../../pieces/form/choice.tsx';
import type { FormProblem } from '../../pieces/form/error-summary.tsx';
import { ErrorSummary } from '../../pieces/form/error-summary.tsx';
import { Select } from '../../pieces/form/select.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { Part } from '../../pieces/page/part.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { DateAsk } from '../import/date-ask.tsx';
import { PageHead } from '../page-head.tsx';
import type { ListFile } from './read-picked.ts';
import { datesAsk, reportsIn, unknownWords } from './read-picked.ts';
import type { ToKeep } from './step-keep.tsx';

export interface StepColumnsProps {
  readonly file: ListFile;
  readonly onTold: (told: ToKeep) => void;
  readonly onOther: () => void;
}

/** What stands where in a list, how its dates are written, and what its words mean. Nothing is guessed. */
export function StepColumns({ file, onTold, onOther }: StepColumnsProps): JSX.Element {
  const words = useAllWords();
  const { takingIn: say, importing } = words;
  const last = mappingOf(useDesk().home);
  const [columns, setColumns] = useState<Columns<ResultColumn>>(file.guessed);
  const [dateForm, setDateForm] = useState<DateForm | undefined>(
    file.remembered ? last?.dates : undefined,
  );
  const [meant, setMeant] = useState<ReadonlyMap<string, Outcome | 'later'>>(
    () => new Map(last?.words.map(({ says, means }) => [says, means]) ?? []),
  );
  const [tried, setTried] = useState<{ problems: readonly FormProblem[]; attempt: number }>({
    problems: [],
    attempt: 0,
  });
  const own = useMemo(
    () =>
      new Map([...meant].flatMap(([word, means]) => (means === 'later' ? [] : [[word, means]]))),
    [meant],
  );
  const dates = useMemo(() => datesAsk(file, columns), [file, columns]);
  const asked = useMemo(
    () => unknownWords(reportsIn(file, { columns, dateForm, words: new Map() })),
    [file, columns, dateForm],
  );
  const problemOf = (field: string) => tried.problems.find((each) => each.field === field)?.text;
  return (
    <>
      <PageHead title={say.columnsTitle}>
        {file.remembered && <p>{say.remembered}</p>}
        {file.sheetName !== undefined && <p>{say.sheets(file.sheetName)}</p>}
      </PageHead>
      <ErrorSummary problems={tried.problems} attempt={tried.attempt} />
      {file.formulaRows.size > 0 && (
        <Notice kind="look" title={say.formulas(file.formulaRows.size)}>
          {say.formulasWhy}
        </Notice>
      )}
      <div class="take-in-columns">
        {resultColumns.map((column) => (
          <Select
            key={column}
            id={`column-${column}`}
            label={say.columns[column]}
            none={importing.map.none}
            problem={problemOf(`column-${column}`)}
            value={columns[column] === undefined ? '' : String(columns[column])}
            onValue={(picked) => {
              const { [column]: _, ...rest } = columns;
              setColumns(picked === '' ? rest : { ...rest, [column]: Number(picked) });
            }}
            options={file.headings.cells.map((heading, i) => ({
              value: String(i),
              label: importing.map.option(i + 1, heading),
            }))}
          />
        ))}
      </div>
      {dates !== undefined && (
        <DateAsk
          question={dates}
          value={dateForm}
          problem={problemOf('dates')}
          onValue={setDateForm}
        />
      )}
      {asked.length > 0 && columns.outcome !== undefined && (
        <Part title={say.columns.outcome}>
          <p class="field-hint">{say.wordHint}</p>
          {asked.map((word) => (
            <Choice<Outcome | 'later'>
              key={word}
              id={`word-${plainWord(word)}`}
              label={say.wordTitle(word || say.wordNone)}
              problem={problemOf(`word-${plainWord(word)}`)}
              value={meant.get(plainWord(word)) ?? ''}
              onValue={(means) =>
                means !== '' && setMeant(new Map([...meant, [plainWord(word), means]]))
              }
              options={[
                ...outcomes.map((value) => ({ value, label: words.results.picks[value] })),
                { value: 'later' as const, label: say.later },
              ]}
            />
          ))}
        </Part>
      )}
      <div class="button-row">
        <Button kind="main" onPress={next}>
          {importing.map.next}
        </Button>
        <Button kind="quiet" onPress={onOther}>
          {say.other}
        </Button>
      </div>
    </>
  );

  function next(): void {
    const problems: FormProblem[] = [];
    if (columns.code === undefined) problems.push({ field: 'column-code', text: say.codeNeeded });
    if (columns.outcome === undefined)
      problems.push({ field: 'column-outcome', text: say.outcomeNeeded });
    if (dates !== undefined && dateForm === undefined)
      problems.push({ field: 'dates', text: importing.map.dateNeeded });
    for (const word of asked)
      if (!meant.has(plainWord(word)))
        problems.push({
          field: `word-${plainWord(word)}`,
          text: say.wordNeeded(word || say.wordNone),
        });
    setTried(({ attempt }) => ({ problems, attempt: attempt + 1 }));
    if (problems.length > 0) return;
    onTold({
      source: file.format,
      reports: reportsIn(file, { columns, dateForm, words: own }),
      mapping: {
        columns: Object.entries(columns).map(([holds, at]) => ({
          holds,
          title: (file.headings.cells[at] ?? '').slice(0, 200),
        })),
        ...(dates !== undefined && dateForm !== undefined && { dates: dateForm }),
        words: [...own].filter(([says]) => says !== '').map(([says, means]) => ({ says, means })),
      },
    });
  }
}
