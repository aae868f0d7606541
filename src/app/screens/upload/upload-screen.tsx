import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { RoundId } from '../../../care/ids.ts';
import type { UploadSetting } from '../../../care/results/upload.ts';
import { uploadFor, uploadRows } from '../../../care/results/upload.ts';
import { roundOf } from '../../../care/rounds/round.ts';
import { writeCsv } from '../../../exchange/spreadsheets/write-csv.ts';
import { mayAs, useDesk } from '../../desk/desk.ts';
import { Button } from '../../pieces/form/button.tsx';
import { DataTable } from '../../pieces/list/data-table.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { EmptyState } from '../../pieces/page/empty-state.tsx';
import { Part } from '../../pieces/page/part.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { EmptyPage } from '../empty-page.tsx';
import { PageHead } from '../page-head.tsx';
import { paths, to } from '../paths.ts';
import type { RegisterData } from '../register/register-data.ts';
import { isOpen, registerData } from '../register/register-data.ts';
import { encodeText } from './encode-text.ts';
import { ReturnedList } from './returned-list.tsx';
import { saveFile } from './save-file.ts';

/** All tests of a round that are not registered as one file, and the list of references that comes back. */
export function UploadScreen({ round: id }: { readonly round: RoundId }): JSX.Element {
  const desk = useDesk();
  const words = useAllWords();
  const say = words.uploading;
  const round = roundOf(desk.home, id);
  if (round === undefined) return <EmptyPage title={words.refusals.unknownPerson} />;
  const { test } = round.planned.data;
  const setting = uploadFor(desk.home, test);
  const data = registerData(desk, round);
  const senior = mayAs(desk, 'senior');
  const set = (label: string) => (
    <Button icon="note" href={to(paths.setUpload(test))}>
      {label}
    </Button>
  );
  return (
    <>
      <PageHead title={say.title}>
        <p>
          {words.roundList.title(round.planned.data.day)}.{' '}
          {say.lead(data.kind?.registrar.name ?? '')}
        </p>
      </PageHead>
      {setting === undefined ? (
        <EmptyState title={say.notSet} action={senior && set(say.set)}>
          {say.notSetHow}
        </EmptyState>
      ) : (
        <>
          <FilePart data={data} setting={setting} />
          {senior && <div>{set(say.change)}</div>}
        </>
      )}
      <ReturnedList />
      <div>
        <Button icon="back" href={to(paths.register(id))}>
          {words.registering.back}
        </Button>
      </div>
    </>
  );
}

function FilePart({
  data,
  setting,
}: {
  readonly data: RegisterData;
  readonly setting: UploadSetting;
}): JSX.Element {
  const { home } = useDesk();
  const { uploading: say } = useAllWords();
  const [saved, setSaved] = useState('');
  const { columns, separator, encoding } = setting.data;
  const open = data.list.filter(isOpen);
  const rows = uploadRows(home, setting.data, open);
  const empty = columns.filter((_, at) => rows.some((row) => row[at] === ''));
  const titles = columns.map(({ title }) => title);
  const encoded = encodeText(writeCsv({ titles, rows }, separator), encoding);
  const name = say.fileName(data.round.planned.data.day);
  if (open.length === 0) return <p>{say.allIn}</p>;
  return (
    <Part title={say.preview(rows.length)}>
      {empty.length > 0 && (
        <Notice kind="look" title={say.empty(empty.map(({ title }) => title))} />
      )}
      <DataTable
        caption={<span class="unseen">{say.preview(rows.length)}</span>}
        columns={columns.map((column, at) => ({
          key: String(at),
          label: column.title,
          cell: (row: readonly string[]) => row[at] ?? '',
        }))}
        rows={rows}
        rowKey={(row) => row.join(' ')}
      />
      {encoded.ok ? (
        <div>
          <Button
            kind="main"
            icon="sent"
            onPress={() => {
              saveFile(encoded.bytes, name);
              setSaved(say.saved(name));
            }}
          >
            {say.save}
          </Button>
        </div>
      ) : (
        <Notice kind="stop" title={say.noFit(encoded.signs)} />
      )}
      <p role="status">{saved}</p>
    </Part>
  );
}
