import type { JSX } from 'preact';
import type { WireOf } from '../../../care/rounds/frame.ts';
import type { Round } from '../../../care/rounds/round.ts';
import { useDesk } from '../../desk/desk.ts';
import { Wire } from '../../pieces/frame/wire.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { rowsOf } from '../round/round-rows.ts';

const STEPS = ['label', 'swab', 'seal', 'pack'] as const;

/** The frame beside the pack table, filling with each scan: four beads a person, so that twelve fit. */
export function PackFrame({
  round,
  wires,
}: {
  readonly round: Round;
  readonly wires: readonly WireOf[];
}): JSX.Element {
  const desk = useDesk();
  const words = useAllWords();
  const rows = rowsOf(desk, words, { round, wires });
  return (
    <section class="pack-frame" aria-label={words.packing.frame}>
      <ul>
        {wires.map((wire, at) => (
          <li key={wire.person}>
            <p>
              <b>{rows[at]?.name}</b>
              <span>{rows[at]?.note}</span>
            </p>
            <Wire
              size="small"
              name={rows[at]?.name ?? ''}
              steps={STEPS.map((key) => ({
                key,
                label: words.frame.steps[key],
                state: wire.beads[key],
              }))}
            />
          </li>
        ))}
      </ul>
    </section>
  );
}
