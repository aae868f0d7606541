import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { Button } from '../../pieces/form/button.tsx';
import { Wire } from '../../pieces/frame/wire.tsx';
import { Icon, type IconName } from '../../pieces/icon/icon.tsx';
import { iconPaths } from '../../pieces/icon/icon-paths.ts';
import { type Column, DataTable, type Sort } from '../../pieces/list/data-table.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { PersonBadge } from '../../pieces/list/person-badge.tsx';
import { CodeText } from '../../pieces/scan/code-text.tsx';
import { useWords } from '../../words/use-words.ts';
import { wire } from '../demo.ts';
import { faces } from '../faces.ts';
import { Specimen } from '../specimen.tsx';

export function ListPieces(): JSX.Element {
  return (
    <main class="gallery">
      <h1>Lists and marks</h1>
      <Specimen name="Notices">
        <Notice kind="helps" title="What helps">
          count aloud with him. Let him hold the tissue.
        </Notice>
        <Notice kind="stop" title="Cor is saying stop when">
          he turns to the wall or hums.
        </Notice>
        <Notice
          kind="look"
          title="Ismay's tube leaked at the lid."
          action={<Button href="#kit">Open a new kit</Button>}
        >
          Put it in the waste bag, wipe down, change gloves.
        </Notice>
        <Notice kind="note" title="Two kits end on Sunday.">
          This round uses them first.
        </Notice>
      </Specimen>
      <Specimen name="Person badges">
        <div class="button-row">
          <PersonBadge name="Cor" size="large" />
          <PersonBadge name="Cor" size="large" photo={faces[1]} />
          <PersonBadge name="Oriel" />
          <PersonBadge name="Oriel" photo={faces[2]} />
        </div>
      </Specimen>
      <Specimen name="Code">
        <p>
          <CodeText code="KX4T7QPM21" />
        </p>
      </Specimen>
      <Specimen name="Table">
        <TestTable />
      </Specimen>
      <Specimen name="Icons">
        <ul class="button-row">
          {Object.keys(iconPaths).map((name) => (
            <li key={name}>
              <Icon name={name as IconName} /> {name}
            </li>
          ))}
        </ul>
      </Specimen>
    </main>
  );
}

interface TestRow {
  readonly name: string;
  readonly code: string;
  readonly hours: number;
  readonly drawing: string;
}

const tests: readonly TestRow[] = [
  { name: 'Oriel Penn', code: 'KX4T7QPM', hours: 26, drawing: '********o' },
  { name: 'Tamsin Roe', code: 'KX4T7QR3', hours: 74, drawing: '********!' },
  { name: 'Ismay Lorne', code: 'KX4T81AA', hours: 3, drawing: '****!oooo' },
];

function TestTable(): JSX.Element {
  const words = useWords();
  const [sort, setSort] = useState<Sort>({ by: 'hours', up: false });
  const columns: readonly Column<TestRow>[] = [
    { key: 'name', label: 'Person', cell: (row) => row.name },
    { key: 'code', label: 'Code', cell: (row) => <CodeText code={row.code} /> },
    { key: 'hours', label: 'Hours since', number: true, sortable: true, cell: (row) => row.hours },
    {
      key: 'wire',
      label: 'How far',
      cell: (row) => <Wire size="small" name={row.name} steps={wire(words, row.drawing)} />,
    },
  ];
  const rows = [...tests].sort((a, b) => (sort.up ? a.hours - b.hours : b.hours - a.hours));
  return (
    <DataTable
      caption="Three tests have no result yet"
      columns={columns}
      rows={rows}
      rowKey={(row) => row.code}
      sort={sort}
      onSort={setSort}
    />
  );
}
