import type { JSX } from 'preact';
import { BeadKey } from '../../pieces/frame/bead-key.tsx';
import { TallyFrame } from '../../pieces/frame/tally-frame.tsx';
import { PrintSheet } from '../../pieces/print/print-sheet.tsx';
import { useWords } from '../../words/use-words.ts';
import { round, service, steps } from '../demo.ts';

export function SheetPiece(): JSX.Element {
  const words = useWords();
  return (
    <main class="gallery">
      <PrintSheet
        service={service}
        title="Thursday's round"
        made={`Made ${words.dates.dayTime('2026-11-26T10:52:00Z')} by Jonah Marsh`}
        foot="About people's health. Keep it locked away. Shred it when done."
        page={{ page: 1, of: 1 }}
      >
        <TallyFrame caption="Thursday's round" steps={steps(words)} rows={round} />
        <BeadKey />
      </PrintSheet>
    </main>
  );
}
