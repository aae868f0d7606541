import type { JSX } from 'preact';
import type { Reading } from '../../../care/custody/agreement.ts';
import { agreementOf } from '../../../care/custody/agreement.ts';
import type { TestId } from '../../../care/ids.ts';
import { useDesk } from '../../desk/desk.ts';
import { namesIn } from '../../desk/names.ts';
import { DataTable } from '../../pieces/list/data-table.tsx';
import { CodeText } from '../../pieces/scan/code-text.tsx';
import { useWords } from '../../words/use-words.ts';

/** Tube = bag = record, each with how it was read and by whom: for a test's page and an inspector's. */
export function Readings({ test }: { readonly test: TestId }): JSX.Element {
  const desk = useDesk();
  const words = useWords();
  const say = words.identity.readings;
  const names = namesIn(desk.home, words.refusals.somebody);
  const { readings, agrees } = agreementOf(desk.home, test);
  const who = ({ by, second }: Reading): string =>
    second.length === 0 ? names.staff(by) : say.both(names.staff(by), second.map(names.staff));
  return (
    <>
      <p>{say.agrees[agrees]}</p>
      <DataTable
        caption={say.title}
        rows={readings}
        rowKey={({ place, at }) => `${place} ${at}`}
        columns={[
          { key: 'place', label: say.columns.place, cell: ({ place }) => say.places[place] },
          { key: 'code', label: say.columns.code, cell: ({ code }) => <CodeText code={code} /> },
          { key: 'how', label: say.columns.how, cell: ({ how }) => say.how[how] },
          { key: 'who', label: say.columns.who, cell: who },
        ]}
      />
    </>
  );
}
