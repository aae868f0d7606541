import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { BeadKey } from '../../pieces/frame/bead-key.tsx';
import { TallyFrame } from '../../pieces/frame/tally-frame.tsx';
import { Wire } from '../../pieces/frame/wire.tsx';
import { useWords } from '../../words/use-words.ts';
import { round, steps, wire } from '../demo.ts';
import { Specimen } from '../specimen.tsx';

export function FramePieces(): JSX.Element {
  const words = useWords();
  const [pressed, setPressed] = useState('nothing');
  return (
    <main class="gallery">
      <h1>Frame</h1>
      <Specimen name="Bead key">
        <BeadKey />
      </Specimen>
      <Specimen name="Tally frame">
        <TallyFrame caption="Thursday's round" steps={steps(words)} rows={round} />
      </Specimen>
      <Specimen name="Tally frame with beads that can be pressed">
        <TallyFrame
          caption="Thursday's round, with beads that lead somewhere"
          steps={steps(words)}
          rows={round}
          beadAction={(row, step) =>
            row === 'bram'
              ? undefined
              : row === 'ismay'
                ? { href: `#${row}-${step}` }
                : { onPress: () => setPressed(`${row} ${step}`) }
          }
        />
        <p>Pressed: {pressed}</p>
      </Specimen>
      <Specimen name="Wire, large">
        <Wire steps={wire(words, '***hooooo')} name="Cor" />
        <Wire steps={wire(words, '****!oooo')} name="Ismay" />
        <Wire steps={wire(words, '*********')} name="Oriel" />
      </Specimen>
      <Specimen name="Wire, small">
        <p>
          Ismay Lorne <Wire size="small" steps={wire(words, '****!oooo')} name="Ismay" />
        </p>
        <p>
          Bram Tolley <Wire size="small" steps={wire(words, '**-------')} name="Bram" />
        </p>
        <p>
          Cor Vale <Wire size="small" steps={wire(words, '***hooooo')} name="Cor" />
        </p>
      </Specimen>
    </main>
  );
}
