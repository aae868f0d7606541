import type { DeviceId } from '../../ledger/ids.ts';
import type { Mark } from '../../ledger/store.ts';

export interface Listener {
  readonly device: DeviceId;
  readonly tell: (head: Mark) => void;
  readonly end: () => void;
}

/** Who wants to hear when the ledger has grown. What they hear is how far, never what. */
export class LiveHub {
  private readonly listeners = new Set<Listener>();
  private told = '';

  join(listener: Listener): () => void {
    this.listeners.add(listener);
    return () => void this.listeners.delete(listener);
  }

  /** Tells everybody, once for each head. */
  grown({ position, chain }: Mark): void {
    if (chain === this.told) return;
    this.told = chain;
    for (const listener of this.listeners) listener.tell({ position, chain });
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
