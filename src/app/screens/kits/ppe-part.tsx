import type { JSX } from 'preact';
import type { Policy } from '../../../care/policy/policy.ts';
import type { PpeLeft } from '../../../care/supplies/ppe.ts';
import { ppeLeft, ppeNeeded } from '../../../care/supplies/ppe.ts';
import { useDesk } from '../../desk/desk.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Chips } from '../../pieces/list/chips.tsx';
import { DataTable } from '../../pieces/list/data-table.tsx';
import { Part } from '../../pieces/page/part.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { paths, to } from '../paths.ts';

/** A usual round, to measure the shelf by. */
const ROUND_OF = 12;

/** Gloves, aprons, masks and eye protection: about how many, and how many rounds they last. */
export function PpePart({ policy }: { readonly policy: Policy }): JSX.Element {
  const desk = useDesk();
  const { supplies } = useAllWords();
  const say = supplies.ppe;
  const takes = ppeNeeded(policy, ROUND_OF);
  return (
    <Part title={say.title} action={<Button href={to(paths.ppe)}>{say.count}</Button>}>
      <DataTable<PpeLeft>
        caption={<span class="unseen">{say.shelf}</span>}
        rows={ppeLeft(desk.home, policy)}
        rowKey={({ item }) => item}
        columns={[
          { key: 'item', label: say.item, cell: ({ item }) => supplies.items[item] },
          { key: 'left', label: say.left, number: true, cell: ({ left }) => left ?? '' },
          { key: 'takes', label: say.takes, number: true, cell: ({ item }) => takes[item] },
          {
            key: 'lasts',
            label: say.lasts,
            cell: ({ item, left }) => <Lasts left={left} takes={takes[item]} />,
          },
          {
            key: 'counted',
            label: say.counted,
            cell: ({ countedOn }) => (countedOn === undefined ? say.never : say.by(countedOn)),
          },
        ]}
      />
    </Part>
  );
}

interface LastsProps {
  readonly left: number | undefined;
  readonly takes: number;
}

function Lasts({ left, takes }: LastsProps): JSX.Element | null {
  const { supplies } = useAllWords();
  const say = supplies.ppe;
  if (left === undefined) return null;
  const rounds = takes === 0 ? 0 : Math.floor(left / takes);
  return rounds === 0 ? (
    <Chips chips={[{ key: 'short', text: say.short, look: true }]} />
  ) : (
    <>{say.rounds(rounds)}</>
  );
}
