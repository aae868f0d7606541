import type { JSX } from 'preact';
import { policyOn } from '../../../care/policy/in-force.ts';
import type { PpeLeft } from '../../../care/supplies/ppe.ts';
import { ppeLeft, ppeNeeded } from '../../../care/supplies/ppe.ts';
import type { Day } from '../../../care/time.ts';
import { useDesk } from '../../desk/desk.ts';
import { DataTable } from '../../pieces/list/data-table.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { Part } from '../../pieces/page/part.tsx';
import { useAllWords } from '../../words/use-all-words.ts';

/** What the round takes by policy, spare included, against what the last count leaves. */
export function PpePart({
  day,
  people,
}: {
  readonly day: Day;
  readonly people: number;
}): JSX.Element {
  const { home } = useDesk();
  const words = useAllWords();
  const say = words.prepare;
  const { policy } = policyOn(home, day);
  const needed = ppeNeeded(policy, people);
  const rows = ppeLeft(home, policy);
  const short = rows.filter(({ item, left }) => left !== undefined && left < needed[item]);
  const columns = [
    { key: 'item', label: say.ppeColumns.item, cell: ({ item }: PpeLeft) => say.ppe[item] },
    {
      key: 'needed',
      label: say.ppeColumns.needed,
      number: true,
      cell: ({ item }: PpeLeft) => needed[item],
    },
    {
      key: 'left',
      label: say.ppeColumns.left,
      number: true,
      cell: ({ left }: PpeLeft) => left ?? say.ppeUnknown,
    },
    {
      key: 'counted',
      label: say.ppeColumns.counted,
      cell: ({ countedOn }: PpeLeft) =>
        countedOn === undefined ? say.ppeUnknown : words.dates.dayMonth(countedOn),
    },
  ];
  return (
    <Part title={say.ppeTitle}>
      {short.length > 0 ? (
        <Notice kind="look" title={say.ppeShort(short.map(({ item }) => say.ppe[item]))} />
      ) : (
        <p>{say.ppeFine}</p>
      )}
      <DataTable
        caption={<span class="unseen">{say.ppeCaption}</span>}
        columns={columns}
        rows={rows}
        rowKey={({ item }) => item}
      />
    </Part>
  );
}
