import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { FileProblem } from '../../../exchange/results/reported.ts';
import { placeText } from '../../../exchange/results/reported.ts';
import { MAX_BYTES } from '../../../exchange/spreadsheets/decode.ts';
import { mappingOf } from '../../../procedures/take-in-results.ts';
import { useDesk } from '../../desk/desk.ts';
import { Button } from '../../pieces/form/button.tsx';
import { FileField } from '../../pieces/form/file-field.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { PageHead } from '../page-head.tsx';
import { paths, to } from '../paths.ts';
import type { CodedFile, ListFile } from './read-picked.ts';
import { readPicked } from './read-picked.ts';
import { StepColumns } from './step-columns.tsx';
import type { ToKeep } from './step-keep.tsx';
import { StepKeep } from './step-keep.tsx';
import './take-in.css';

/** Greatest file that is read in the browser, coded ones included. */
const MOST = MAX_BYTES;

type Bad = Pick<FileProblem, 'place' | 'detail'> & {
  readonly problem: FileProblem['problem'] | 'unreadable';
};

/** A file from the laboratory: picked, asked about, looked at, kept. Nothing is kept before the last press. */
export function TakeInScreen(): JSX.Element {
  const { takingIn: say, results } = useAllWords();
  const [file, setFile] = useState<ListFile | CodedFile | undefined>(undefined);
  const [toKeep, setToKeep] = useState<ToKeep | undefined>(undefined);
  const again = (): void => {
    setFile(undefined);
    setToKeep(undefined);
  };
  if (toKeep !== undefined)
    return (
      <StepKeep
        given={toKeep}
        onBack={toKeep.mapping ? () => setToKeep(undefined) : again}
        onOther={again}
      />
    );
  if (file?.kind === 'list') return <StepColumns file={file} onTold={setToKeep} onOther={again} />;
  return (
    <>
      <PageHead title={say.title} />
      <PickFile
        onFile={(picked) => {
          setFile(picked);
          if (picked.kind === 'coded')
            setToKeep({ source: picked.format, reports: picked.reports, mapping: undefined });
        }}
      />
      <div class="button-row">
        <Button kind="quiet" href={to(paths.results)}>
          {results.title}
        </Button>
      </div>
    </>
  );
}

function PickFile({
  onFile,
}: {
  readonly onFile: (file: ListFile | CodedFile) => void;
}): JSX.Element {
  const desk = useDesk();
  const { takingIn: say } = useAllWords();
  const [bad, setBad] = useState<Bad | undefined>(undefined);
  const [reading, setReading] = useState(false);
  return (
    <>
      <FileField
        id="file"
        label={say.fileLabel}
        hint={say.fileHint}
        accept=".csv,.tsv,.txt,.xlsx,.json,.ndjson,.hl7,text/csv,text/plain,application/json"
        problem={bad && say.bad[bad.problem]}
        onFile={(file) => void take(file)}
      />
      <p role="status">{reading && say.reading}</p>
      {bad !== undefined && bad.detail !== '' && (
        <Notice kind="look" title={say.toOffice}>
          {bad.detail} {bad.place && say.where(placeText(bad.place))}
        </Notice>
      )}
    </>
  );

  async function take(file: File): Promise<void> {
    setBad(undefined);
    if (file.size > MOST) {
      setBad({ problem: 'too-large', detail: '' });
      return;
    }
    setReading(true);
    const buffer = await file.arrayBuffer().catch(() => undefined);
    setReading(false);
    if (buffer === undefined) {
      setBad({ problem: 'unreadable', detail: '' });
      return;
    }
    const { home } = desk;
    const read = readPicked(new Uint8Array(buffer), {
      zone: home.service.zone,
      mapping: mappingOf(home),
    });
    if (read.kind === 'bad') setBad(read);
    else onFile(read);
  }
}
