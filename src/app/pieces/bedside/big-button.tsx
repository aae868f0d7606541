import type { ComponentChildren, JSX } from 'preact';
import { type DeafnessOptions, useDeafness } from './use-deafness.ts';
import './big-button.css';

export interface BigButtonProps extends DeafnessOptions {
  readonly children: ComponentChildren;
  /** Called with the monotonic instant of the press. */
  readonly onPress: (at: number) => void;
}

/**
 * The one large button of a step. It stays focusable and says nothing while deaf; it only does not act.
 * A key held down presses once.
 */
export function BigButton({ children, onPress, ...deafness }: BigButtonProps): JSX.Element {
  const isDeaf = useDeafness(deafness);
  return (
    <button
      type="button"
      class="big-button"
      onKeyDown={(event) => {
        if (event.repeat) event.preventDefault();
      }}
      onClick={() => {
        if (!isDeaf()) onPress(deafness.now());
      }}
    >
      {children}
    </button>
  );
}
