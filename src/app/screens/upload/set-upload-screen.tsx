import type { JSX } from 'preact';
import type { DateForm, Encoding, Separator } from '../../../care/results/facts.ts';
import { dateForms, encodings, separators } from '../../../care/results/facts.ts';
import type { UploadSetting } from '../../../care/results/upload.ts';
import { uploadFor } from '../../../care/results/upload.ts';
import { setUpload } from '../../../procedures/set-upload.ts';
import { mayAs, useDesk } from '../../desk/desk.ts';
import { RecordForm } from '../../keeping/record-form.tsx';
import { useDraft } from '../../keeping/use-draft.ts';
import { useKeep } from '../../keeping/use-keep.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Choice } from '../../pieces/form/choice.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { EmptyPage } from '../empty-page.tsx';
import { paths } from '../paths.ts';
import { ColumnFields } from './column-fields.tsx';
import type { Column } from './columns.ts';
import './upload.css';

type Setting = Omit<UploadSetting['data'], 'replaces' | 'test'>;

const START: Setting = {
  columns: [{ holds: 'code', title: '' }],
  dates: 'dd/mm/yyyy',
  encoding: 'utf-8',
  separator: 'comma',
};

/** The columns of the reporting body's file, set once from its instructions. */
export function SetUploadScreen({ test }: { readonly test: string }): JSX.Element {
  const desk = useDesk();
  const words = useAllWords();
  const say = words.uploading;
  const before = uploadFor(desk.home, test)?.data;
  const { value, set, drop } = useDraft<Setting>(
    before === undefined ? START : shown(before),
    say.setTitle,
  );
  const keep = useKeep();
  if (!mayAs(desk, 'senior')) return <EmptyPage title={say.seniorOnly} />;

  const submit = async (): Promise<void> => {
    const wrong = value.columns.flatMap(({ holds, title, text }, at) => [
      ...(title.trim() === '' ? [{ field: `title-${at}`, text: say.wrongTitle(at + 1) }] : []),
      ...(holds === 'fixed' && (text ?? '').trim() === ''
        ? [{ field: `text-${at}`, text: say.wrongText(at + 1) }]
        : []),
    ]);
    const kept = await keep.keep(wrong, (home, doing) =>
      setUpload(home, { test, ...value, columns: value.columns.map(bare) }, doing),
    );
    if (kept === undefined) return;
    drop();
    history.back();
  };

  return (
    <RecordForm
      title={say.setTitle}
      lead={<p>{say.setLead}</p>}
      back={paths.rounds}
      keep={keep}
      onKeep={() => void submit()}
    >
      <ol class="upload-columns">
        {value.columns.map((column, at) => (
          <ColumnFields
            key={at}
            columns={value.columns}
            at={at}
            onColumns={(columns) => set({ columns })}
            problemOf={keep.problemOf}
          />
        ))}
      </ol>
      <div>
        <Button
          icon="next"
          onPress={() => set({ columns: [...value.columns, { holds: 'name', title: '' }] })}
        >
          {say.add}
        </Button>
      </div>
      <Choice<DateForm>
        id="dates"
        label={say.dateForm}
        inline
        value={value.dates}
        onValue={(dates) => dates !== '' && set({ dates })}
        options={dateForms.map((form) => ({ value: form, label: say.dates[form] }))}
      />
      <Choice<Separator>
        id="separator"
        label={say.separator}
        inline
        value={value.separator}
        onValue={(separator) => separator !== '' && set({ separator })}
        options={separators.map((each) => ({ value: each, label: say.separators[each] }))}
      />
      <Choice<Encoding>
        id="encoding"
        label={say.encoding}
        value={value.encoding}
        onValue={(encoding) => encoding !== '' && set({ encoding })}
        options={encodings.map((each) => ({ value: each, ...say.encodings[each] }))}
      />
    </RecordForm>
  );
}

const shown = ({ columns, dates, encoding, separator }: UploadSetting['data']): Setting => ({
  columns,
  dates,
  encoding,
  separator,
});

/** A text is kept only where the column is that text. */
const bare = ({ holds, title, text }: Column): Column =>
  holds === 'fixed' && text !== undefined ? { holds, title, text: text.trim() } : { holds, title };
