/** The two clocks by which idleness is told, ms. */
export interface Clocks {
  readonly monotonic: () => number;
  readonly now: () => number;
}

/**
 * How long nobody has touched the tablet. The monotonic clock cannot be set, but on some systems it
 * stands still while the lid is closed; the other one tells of that time. Whichever says more counts.
 */
export class Idle {
  private monotonic: number;
  private wall: number;

  constructor(private readonly clocks: Clocks) {
    this.monotonic = clocks.monotonic();
    this.wall = clocks.now();
  }

  touched(): void {
    this.monotonic = this.clocks.monotonic();
    this.wall = this.clocks.now();
  }

  get ms(): number {
    const { monotonic, now } = this.clocks;
    return Math.max(0, monotonic() - this.monotonic, now() - this.wall);
  }
}

const TOUCHES = ['pointerdown', 'keydown', 'wheel', 'touchstart'] as const;
const LOOK_EVERY_MS = 1000;

/** Watches for touches anywhere on the page, and says when there were none for `limit()` ms. */
export function watchIdle(
  clocks: Clocks,
  by: { readonly limit: () => number; readonly over: () => void },
): { readonly touched: () => void; readonly stop: () => void } {
  const idle = new Idle(clocks);
  const look = () => {
    if (idle.ms >= by.limit()) by.over();
  };
  // A touch that comes after the time is over must not count: somebody else may have made it.
  const touched = () => {
    if (idle.ms >= by.limit()) by.over();
    else idle.touched();
  };
  const options = { capture: true, passive: true } as const;
  for (const touch of TOUCHES) addEventListener(touch, touched, options);
  // A tablet that wakes up is looked at before it shows anything.
  document.addEventListener('visibilitychange', look);
  const timer = setInterval(look, LOOK_EVERY_MS);
  return {
    touched,
    stop: () => {
      clearInterval(timer);
      document.removeEventListener('visibilitychange', look);
      for (const touch of TOUCHES) removeEventListener(touch, touched, options);
    },
  };
}
