import type { ComponentChildren, JSX } from 'preact';
import { useState } from 'preact/hooks';
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
  /** A camera view, where there is one. */
  readonly camera?: ComponentChildren;
  /** What has been read, where it may be shown. */
  readonly children?: ComponentChildren;
  readonly rules?: BurstRules | undefined;
}

/** Waits for a scanner, wherever the focus is. Typing by hand is the fallback and is checked harder. */
export function ScanField(props: ScanFieldProps): JSX.Element {
  const { onCode, rules = usualBurstRules } = props;
  const { scan } = useWords();
  const [typing, setTyping] = useState(false);
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
        <ScanReady camera={props.camera} onType={() => setTyping(true)} />
      )}
    </div>
  );
}

function ScanReady({
  camera,
  onType,
}: {
  camera: ComponentChildren;
  onType: () => void;
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
      <Button icon="keyboard" onPress={onType}>
        {scan.typeInstead}
      </Button>
    </>
  );
}
