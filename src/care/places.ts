import type { Shelf } from './kind.ts';

/** A set of bags, each by its shelf and key: a text made of both would cost more than its filing. */
export class Places {
  private shelves = new Map<Shelf, Set<string>>();

  add(shelf: Shelf, key: string): void {
    const keys = this.shelves.get(shelf);
    if (keys === undefined) this.shelves.set(shelf, new Set([key]));
    else keys.add(key);
  }

  get any(): boolean {
    return this.shelves.size > 0;
  }

  *[Symbol.iterator](): Generator<[Shelf, string]> {
    for (const [shelf, keys] of this.shelves) for (const key of keys) yield [shelf, key];
  }

  /** All that another has; it is empty then. */
  static takenFrom(other: Places): Places {
    const taken = new Places();
    [taken.shelves, other.shelves] = [other.shelves, taken.shelves];
    return taken;
  }

  /** One after another, each gone from here when it is given. What is left stays. */
  *takenOut(): Generator<[Shelf, string]> {
    for (const [shelf, keys] of this.shelves) {
      for (const key of keys) {
        keys.delete(key);
        if (keys.size === 0) this.shelves.delete(shelf);
        yield [shelf, key];
      }
    }
  }
}
