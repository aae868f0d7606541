import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { PairLine } from '../../../procedures/register-list.ts';
import { readPairs, registerPairs } from '../../../procedures/register-list.ts';
import { useDesk } from '../../desk/desk.ts';
import { namesIn } from '../../desk/names.ts';
import { sayRefusal } from '../../desk/say-refusal.ts';
import { useAct } from '../../desk/use-act.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Field } from '../../pieces/form/field.tsx';
import { DataTable } from '../../pieces/list/data-table.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { Part } from '../../pieces/page/part.tsx';
import { useAllWords } from '../../words/use-all-words.ts';

/** Codes with their references, pasted: every line is checked by itself and shown before any is kept. */
export function ReturnedList(): JSX.Element {
  const desk = useDesk();
  const { uploading: say } = useAllWords();
  const { act, problem } = useAct();
  const [pasted, setPasted] = useState('');
  const [lines, setLines] = useState<readonly PairLine[]>([]);
  const [kept, setKept] = useState(0);
  const good = lines.filter(({ found }) => found.ok);

  const check = (): void => {
    setKept(0);
    // Only read: what a scan of the list would do if it were kept.
    setLines(
      readPairs(desk.home, pasted, {
        ...{ now: desk.now(), by: desk.me, device: desk.device },
        draw: () => '',
      }),
    );
  };
  const keep = async (): Promise<void> => {
    const facts = await act((home, doing) => registerPairs(home, lines, doing));
    if (facts === undefined) return;
    setKept(facts.length);
    setLines(lines.filter(({ found }) => !found.ok));
    setPasted('');
  };

  return (
    <Part title={say.then}>
      <p>{say.thenLead}</p>
      <form
        class="form-grid"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          check();
        }}
      >
        <Field id="pairs" label={say.paste} lines={6} value={pasted} onValue={setPasted} />
        <Button submit>{say.check}</Button>
      </form>
      <div role="alert">{problem !== undefined && <Notice kind="stop" title={problem} />}</div>
      <p role="status">
        {kept > 0 && say.kept(kept)}{' '}
        {lines.length > 0 && say.lines(good.length, lines.length - good.length)}
      </p>
      {lines.length > 0 && <Lines lines={lines} />}
      {good.length > 0 && (
        <div>
          <Button kind="main" icon="tick" onPress={() => void keep()}>
            {say.keepGood(good.length)}
          </Button>
        </div>
      )}
    </Part>
  );
}

function Lines({ lines }: { readonly lines: readonly PairLine[] }): JSX.Element {
  const { home } = useDesk();
  const words = useAllWords();
  const say = words.uploading;
  const names = namesIn(home, words.refusals.somebody);
  const line = { key: 'line', label: say.columns.line, cell: (row: PairLine) => row.line };
  const good = lines.filter(({ found }) => found.ok);
  const bad = lines.filter(({ found }) => !found.ok);
  const wrong = ({ found }: PairLine): string => {
    if (found.ok) return '';
    if (found.why === 'refused') return sayRefusal(found.refusal, { words, home });
    return found.why === 'twice' ? say.twice : say.notAPair;
  };
  return (
    <>
      {good.length > 0 && (
        <DataTable
          caption={say.goodTitle}
          columns={[
            line,
            {
              key: 'person',
              label: say.columns.person,
              cell: ({ found }) => (found.ok ? names.test(found.test) : ''),
            },
            {
              key: 'reference',
              label: say.columns.reference,
              cell: ({ found }) => (found.ok ? found.reference : ''),
            },
          ]}
          rows={good}
          rowKey={(row) => String(row.line)}
        />
      )}
      {bad.length > 0 && (
        <DataTable
          caption={say.badTitle}
          columns={[
            line,
            { key: 'said', label: say.columns.said, cell: ({ text }) => text },
            { key: 'wrong', label: say.columns.wrong, cell: wrong },
          ]}
          rows={bad}
          rowKey={(row) => String(row.line)}
        />
      )}
    </>
  );
}
