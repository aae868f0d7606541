import type { DeviceId } from '../../ledger/ids.ts';
import type { Mark } from '../../ledger/store.ts';

export interface Listener {
  readonly device: DeviceId;
  readonly tell: (head: Mark) => void;
  /** A sign of life, so that nothing on the way takes the line for dead. */
  readonly beat: () => void;
  readonly end: () => void;
}

/** One for each page that a tablet may have open, and one that the browser has not yet let go. */
const MOST_OF_A_DEVICE = 4;

/** Who wants to hear when the ledger has grown. What they hear is how far, never what. */
export class LiveHub {
  private readonly listeners = new Set<Listener>();
  private told = '';

  /** One too many of a tablet ends its oldest: a copied cookie cannot fill the server with lines. */
  join(listener: Listener): () => void {
    const theirs = [...this.listeners].filter(({ device }) => device === listener.device);
    for (const each of theirs.slice(0, -(MOST_OF_A_DEVICE - 1))) each.end();
    this.listeners.add(listener);
    return () => void this.listeners.delete(listener);
  }

  /** Tells everybody, once for each head. */
  grown({ position, chain }: Mark): void {
    if (chain === this.told) return;
    this.told = chain;
    for (const listener of this.listeners) listener.tell({ position, chain });
  }

  beat(): void {
    for (const listener of this.listeners) listener.beat();
  }

  /** A tablet that was retired hears no more. */
  drop(device: DeviceId): void {
    for (const listener of this.listeners) if (listener.device === device) listener.end();
  }

  close(): void {
    for (const listener of this.listeners) listener.end();
  }

  get size(): number {
    return this.listeners.size;
  }
}
