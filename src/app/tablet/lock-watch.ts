import type { TabletRules } from '../../procedures/access/wire.ts';
import { type Clocks, watchIdle } from './idle.ts';

const MINUTE = 60_000;
/** Before the service has said anything else. */
const IDLE_MINUTES = 3;

interface Watching {
  readonly clocks: Clocks;
  readonly rules: () => TabletRules | undefined;
  readonly lock: () => void;
}

/** Says when an open tablet has to lock: nobody touches it, or whoever is signed in may not be. */
export class LockWatch {
  private idle: ReturnType<typeof watchIdle> | undefined;
  private holds = 0;
  private waiting = false;

  constructor(private readonly by: Watching) {}

  start(): void {
    this.idle ??= watchIdle(this.by.clocks, {
      limit: () => this.limit(),
      over: () => this.by.lock(),
    });
    this.idle.touched();
  }

  stop(): void {
    this.idle?.stop();
  }

  /** A kit is open: the longer idle time holds until what this answers is called. */
  hold(): () => void {
    let held = true;
    this.holds += 1;
    return () => {
      if (!held) return;
      held = false;
      this.holds -= 1;
      if (this.holds === 0 && this.waiting) this.by.lock();
    };
  }

  /** Locks at once, or when what is in hand has been finished. */
  lockWhenFree(): void {
    if (this.holds === 0) this.by.lock();
    else this.waiting = true;
  }

  private limit(): number {
    const rules = this.by.rules();
    const minutes = this.holds > 0 ? rules?.idleMinutesKitOpen : rules?.idleMinutes;
    return (minutes ?? IDLE_MINUTES) * MINUTE;
  }
}
