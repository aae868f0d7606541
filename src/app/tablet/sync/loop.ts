import { ASK_EVERY_MS, ASK_LIVE_EVERY_MS, waitAfter } from './pace.ts';

/** One attempt: `met` the server, or not. */
export type Attempt = () => Promise<'met' | 'failed'>;

export interface LoopParts {
  readonly attempt: Attempt;
  /** A number in [0, 1). */
  readonly chance: () => number;
  /** The server tells by itself when there is something new. */
  readonly isLive: () => boolean;
}

/**
 * Decides when to sync: at once when something was written here or there, again ever more seldom
 * while the server cannot be reached, and now and then in any case. One attempt at a time; what is
 * asked for meanwhile follows when it ends.
 */
export class SyncLoop {
  private failures = 0;
  private timer: ReturnType<typeof setTimeout> | undefined;
  private running: Promise<void> | undefined;
  private again = false;
  private stopped = false;

  constructor(private readonly parts: LoopParts) {}

  /**
   * There is something to send or to fetch. Waits its turn after failures; but while an attempt is
   * under way, it follows if that one meets the server: its answer may be older than the news.
   */
  nudge(): void {
    if (this.failures === 0 || this.running) void this.now();
  }

  /** Tries at once, whatever went before. Ends when this attempt, or the one under way, has ended. */
  now(): Promise<void> {
    if (this.stopped) return Promise.resolve();
    if (this.running) {
      this.again = true;
      return this.running;
    }
    clearTimeout(this.timer);
    this.running = this.run().finally(() => {
      this.running = undefined;
      this.schedule();
    });
    return this.running;
  }

  async stop(): Promise<void> {
    this.stopped = true;
    clearTimeout(this.timer);
    await this.running;
  }

  private async run(): Promise<void> {
    do {
      this.again = false;
      const outcome = await this.parts.attempt();
      this.failures = outcome === 'met' ? 0 : this.failures + 1;
    } while (this.mayGoOn());
  }

  private mayGoOn(): boolean {
    return this.again && this.failures === 0 && !this.stopped;
  }

  private schedule(): void {
    if (this.stopped) return;
    const { chance, isLive } = this.parts;
    const wait =
      this.failures > 0
        ? waitAfter(this.failures, chance())
        : isLive()
          ? ASK_LIVE_EVERY_MS
          : ASK_EVERY_MS;
    clearTimeout(this.timer);
    this.timer = setTimeout(() => void this.now(), wait);
  }
}
