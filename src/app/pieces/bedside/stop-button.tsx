import type { JSX } from 'preact';
import { useRef } from 'preact/hooks';
import { useWords } from '../../words/use-words.ts';
import { Icon } from '../icon/icon.tsx';
import { type StopEvent, type StopPress, stopPress } from './stop-press.ts';
import './stop-button.css';

export interface StopButtonProps {
  readonly name: string;
  readonly onStop: () => void;
}

/** "Stop for NAME": one tap, never deaf, never asks again. The same shape and place on every step. */
export function StopButton({ name, onStop }: StopButtonProps): JSX.Element {
  const { bedside } = useWords();
  const state = useRef<StopPress>('idle');
  const hear = (event: StopEvent): void => {
    const step = stopPress(state.current, event);
    state.current = step.state;
    if (step.fires) onStop();
  };
  return (
    <button
      type="button"
      class="stop-button"
      onPointerDown={(event) => {
        if (event.button !== 0) return;
        event.currentTarget.setPointerCapture(event.pointerId);
        hear('down');
      }}
      onPointerUp={() => hear('lift')}
      onPointerCancel={() => hear('cancel')}
      onClick={(event) => hear(event.detail === 0 ? 'key' : 'click')}
    >
      <span class="stop-button-words">
        <Icon name="hand" />
        {bedside.stopFor(name)}
      </span>
    </button>
  );
}
