import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { ScanField } from '../../pieces/scan/scan-field.tsx';
import { Specimen } from '../specimen.tsx';

/** A scan field whose camera can be tried; what was read stands below it. */
export function CameraPiece(): JSX.Element {
  const [codes, setCodes] = useState<readonly string[]>([]);
  const expect = new URLSearchParams(location.search).get('expect') === 'box' ? 'box' : 'label';
  return (
    <main class="gallery">
      <h1>Camera</h1>
      <Specimen name="Scan field with a camera">
        <ScanField
          expect={expect}
          onCode={(code, way) => setCodes([...codes, `${way}: ${code}`])}
        />
        <ul id="codes">
          {codes.map((code, i) => (
            <li key={i}>{code}</li>
          ))}
        </ul>
      </Specimen>
    </main>
  );
}
