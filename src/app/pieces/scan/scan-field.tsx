import type { ComponentChildren, JSX } from 'preact';
import { useState } from 'preact/hooks';
import { mayHaveCamera } from '../../camera/camera-stream.ts';
import { LazyCamera } from '../../camera/lazy-camera.tsx';
import { useWords } from '../../words/use-words.ts';
import { Button } from '../form/button.tsx';
import { Icon } from '../icon/icon.tsx';
import { type BurstRules, usualBurstRules } from './key-burst.ts';
import { TypeTwiceForm } from './type-twice-form.tsx';
import { useScanner } from './use-scanner.ts';
import './scan-field.css';

/** How a code came in: it is kept with the fact. */
export type ScanWay = 'scanned' | 'typed twice';

export interface ScanFieldProps {
  readonly onCode: (code: string, way: ScanWay) => void;
  /** What is wrong with the last code and what to do. */
  readonly problem?: ComponentChildren;
  /** A camera view of one's own; without it the field offers the tablet's camera, where there is one. */
  readonly camera?: ComponentChildren;
  /** Whether a kit's own label is wanted or the code of a box: a camera sees both. */
  readonly expect?: 'label' | 'box' | undefined;
  /** What has been read, where it may be shown. */
  readonly children?: ComponentChildren;
  readonly rules?: BurstRules | undefined;
}

/** Waits for a scanner, wherever the focus is. Typing by hand is the fallback and is checked harder. */
export function ScanField(props: ScanFieldProps): JSX.Element {
  const { onCode, rules = usualBurstRules } = props;
  const { scan } = useWords();
  const [typing, setTyping] = useState(false);
  const [filming, setFilming] = useState(false);
  const unfinished = useScanner({
    rules,
    onScan: (code) => {
      setTyping(false);
      onCode(code, 'scanned');
    },
  });
  return (
    <div class="scan-field">
      <div class="scan-said" role="status">
        {unfinished && <p class="field-problem">{scan.unfinished}</p>}
        {props.problem !== undefined && <div class="field-problem">{props.problem}</div>}
        {props.children}
      </div>
      {typing ? (
        <TypeTwiceForm
          least={rules.least}
          onBack={() => setTyping(false)}
          onCode={(code) => {
            setTyping(false);
            onCode(code, 'typed twice');
          }}
        />
      ) : (
        <ScanReady
          camera={
            filming ? (
              <LazyCamera
                expect={props.expect}
                onCode={(code) => onCode(code, 'scanned')}
                onClose={() => setFilming(false)}
              />
            ) : (
              props.camera
            )
          }
          onType={() => {
            setFilming(false);
            setTyping(true);
          }}
          onCamera={!filming && mayHaveCamera() ? () => setFilming(true) : undefined}
        />
      )}
    </div>
  );
}

function ScanReady({
  camera,
  onType,
  onCamera,
}: {
  camera: ComponentChildren;
  onType: () => void;
  onCamera: (() => void) | undefined;
}): JSX.Element {
  const { scan } = useWords();
  return (
    <>
      {camera ?? (
        <div class="scan-ready">
          <Icon name="scan" />
          <p>
            <b>{scan.ready}</b>
            {scan.readyNote}
          </p>
        </div>
      )}
      <div class="button-row">
        {onCamera !== undefined && (
          <Button icon="camera" onPress={onCamera}>
            {scan.camera}
          </Button>
        )}
        <Button icon="keyboard" onPress={onType}>
          {scan.typeInstead}
        </Button>
      </div>
    </>
  );
}
