/** Something that changes, as screens read it: the value now, and word of the next. */
export interface Readable<T> {
  get(): T;
  /** Answers what ends it. */
  subscribe(listener: (value: T) => void): () => void;
}

/** The smallest store there is. A change that changes nothing tells nobody. */
export class Observable<T extends object> implements Readable<T> {
  private readonly listeners = new Set<(value: T) => void>();

  constructor(private value: T) {}

  get(): T {
    return this.value;
  }

  set(change: Partial<T>): void {
    const keys = Object.keys(change) as (keyof T)[];
    if (keys.every((key) => Object.is(this.value[key], change[key]))) return;
    this.value = { ...this.value, ...change };
    for (const listener of [...this.listeners]) listener(this.value);
  }

  subscribe(listener: (value: T) => void): () => void {
    this.listeners.add(listener);
    return () => void this.listeners.delete(listener);
  }
}
