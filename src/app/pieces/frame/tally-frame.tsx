import type { JSX } from 'preact';
import { useWords } from '../../words/use-words.ts';
import type { TallyFrameProps } from './frame-data.ts';
import { FrameRow } from './frame-row.tsx';
import './tally-frame.css';

/** A round as a bead frame: a table with people down the side and the steps of custody across. */
export function TallyFrame({ caption, steps, rows, beadAction }: TallyFrameProps): JSX.Element {
  const { frame } = useWords();
  return (
    <div
      class="tally-frame"
      data-pressable={beadAction !== undefined}
      style={{ '--steps': steps.length }}
    >
      <div class="frame-scroll">
        {/* Roles are repeated because narrow screens lay the table out as a grid, which can drop them. */}
        <table role="table">
          <caption class="unseen">{caption}</caption>
          <thead role="rowgroup">
            <tr role="row">
              <th role="columnheader" scope="col" class="frame-person">
                {frame.person}
              </th>
              {steps.map((step) => (
                <th key={step.key} role="columnheader" scope="col" class="frame-step">
                  <span>{step.label}</span>
                </th>
              ))}
            </tr>
          </thead>
          <tbody role="rowgroup">
            {rows.map((row) => (
              <FrameRow key={row.key} row={row} steps={steps} beadAction={beadAction} />
            ))}
          </tbody>
        </table>
      </div>
    </div>
  );
}
