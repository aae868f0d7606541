import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { BigButton } from '../../pieces/bedside/big-button.tsx';
import { BlindChoice } from '../../pieces/bedside/blind-choice.tsx';
import { DwellDial } from '../../pieces/bedside/dwell-dial.tsx';
import { StopButton } from '../../pieces/bedside/stop-button.tsx';
import { CodeText } from '../../pieces/scan/code-text.tsx';
import { ScanField } from '../../pieces/scan/scan-field.tsx';
import { faces } from '../faces.ts';
import { Specimen } from '../specimen.tsx';

const now = (): number => performance.now();
const throat = { from: 10, to: 10 };
const nostril = { from: 10, to: 15 };

export function BedsidePieces(): JSX.Element {
  return (
    <main class="gallery">
      <h1>Bedside</h1>
      <PressTrial />
      <ChoiceTrial />
      <Specimen name="Blind choice of faces">
        <BlindChoice
          step="faces"
          now={now}
          question="Which of these is the person in front of you?"
          options={faces.map((photo, i) => ({ key: String(i), photo }))}
          onPick={() => undefined}
        />
      </Specimen>
      <ScanTrial />
      <Specimen name="Dwell dial: throat at 0, 3 and 10 seconds">
        <DwellDial elapsed={0} target={throat} />
        <DwellDial elapsed={3.4} target={throat} />
        <DwellDial elapsed={10} target={throat} />
      </Specimen>
      <Specimen name="Dwell dial: nostril at 9, 12 and 17 seconds">
        <DwellDial elapsed={9} target={nostril} />
        <DwellDial elapsed={12} target={nostril} />
        <DwellDial elapsed={17} target={nostril} />
      </Specimen>
    </main>
  );
}

function PressTrial(): JSX.Element {
  const [step, setStep] = useState(1);
  const [stops, setStops] = useState(0);
  return (
    <Specimen name="Big button and stop">
      <BigButton step={String(step)} now={now} onPress={() => setStep(step + 1)}>
        Lid tight, dry
      </BigButton>
      <div style={{ marginBlockStart: '16px' }}>
        <StopButton name="Cor" onStop={() => setStops(stops + 1)} />
      </div>
      <p id="press-trial">
        Step {step}, stopped {stops} times
      </p>
    </Specimen>
  );
}

function ChoiceTrial(): JSX.Element {
  const [picked, setPicked] = useState('nothing');
  return (
    <Specimen name="Blind choice of birthdays">
      <BlindChoice
        step="who"
        now={now}
        question="When is your birthday?"
        hint="Ask it just so. Do not say a date yourself."
        options={['14 March', '2 June', '14 May', '30 November'].map((text) => ({
          key: text,
          text,
        }))}
        onPick={(key) => setPicked(key ?? 'none of these')}
      />
      <p id="choice-trial">Picked: {picked}</p>
    </Specimen>
  );
}

function ScanTrial(): JSX.Element {
  const [codes, setCodes] = useState<readonly string[]>([]);
  const last = codes.at(-1);
  return (
    <Specimen name="Scan field">
      <ScanField onCode={(code, way) => setCodes([...codes, `${code} ${way}`])}>
        {last !== undefined && <CodeText code={last.split(' ')[0] ?? ''} />}
      </ScanField>
      <p id="scan-trial">
        {codes.length} read: {codes.join(', ')}
      </p>
    </Specimen>
  );
}
