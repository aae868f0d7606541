import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { type KeptField, keepField, restoreField } from './kept-field.ts';
import {
  type BurstRules,
  type BurstState,
  burstKey,
  isUnfinished,
  quiet,
  usualBurstRules,
} from './key-burst.ts';

export interface ScannerOptions {
  readonly onScan: (code: string) => void;
  readonly rules?: BurstRules | undefined;
  /** False while nothing may be scanned. */
  readonly listening?: boolean | undefined;
}

/** The character a key stands for, or undefined for keys that are none (Shift, arrows). */
function signOf(event: KeyboardEvent): string | undefined {
  if (event.ctrlKey && event.key === ']') return '\u001d';
  if (event.ctrlKey || event.altKey || event.metaKey || event.isComposing) return undefined;
  return event.key.length === 1 || event.key === 'Enter' || event.key === 'Tab'
    ? event.key
    : undefined;
}

/**
 * Hears a scanner anywhere on the page, wherever the focus is, and takes no focus itself. The keys of a
 * burst are kept from buttons, and a field they fell into is put back as it was, so that a scan cannot
 * press or fill anything. Times are those the device gave the keys, so a busy page does not
 * stretch a burst. Returns whether the last burst broke off.
 */
export function useScanner(options: ScannerOptions): boolean {
  const [unfinished, setUnfinished] = useState(false);
  const latest = useRef(options);
  latest.current = options;
  const listening = options.listening ?? true;

  // Before anything is painted: a page that says it is ready hears the first key.
  useLayoutEffect(() => {
    if (!listening) return undefined;
    let state: BurstState = quiet;
    let kept: KeptField | undefined;
    let timer: ReturnType<typeof setTimeout> | undefined;

    const hear = (event: KeyboardEvent): void => {
      const { onScan, rules = usualBurstRules } = latest.current;
      const key = signOf(event);
      if (key === undefined || event.repeat) return;
      const step = burstKey(state, { key, at: event.timeStamp }, rules);
      state = step.state;
      const { finding } = step;
      clearTimeout(timer);
      if (finding.kind === 'hand') return;
      if (finding.kind === 'first') {
        kept = keepField(event.target);
        return;
      }
      const inField = kept !== undefined && kept.field === event.target;
      // A quick typist's second key must reach the field; a scan is taken out of it at its end.
      if (finding.kind !== 'within' || !inField) {
        event.preventDefault();
        event.stopPropagation();
      }
      setUnfinished(false);
      if (finding.kind === 'within') {
        const wait = rules.gapMs * 5;
        timer = setTimeout(
          () => setUnfinished(isUnfinished(state, state.lastAt + wait, rules)),
          wait,
        );
        return;
      }
      restoreField(kept);
      setUnfinished(finding.kind === 'broken');
      if (finding.kind === 'scan') onScan(finding.code);
    };

    document.addEventListener('keydown', hear, true);
    return () => {
      clearTimeout(timer);
      document.removeEventListener('keydown', hear, true);
    };
  }, [listening]);

  return unfinished;
}
