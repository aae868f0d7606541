import { below, type Chance } from './chance.ts';

interface Shuffled {
  readonly length: number;
  [index: number]: number;
}

/** Shuffles in place, every order as likely (Fisher-Yates). */
export function shuffle<T extends Shuffled>(chance: Chance, items: T): T {
  for (let i = items.length - 1; i > 0; i--) {
    const j = below(chance, i + 1);
    const held = items[i] as number;
    items[i] = items[j] as number;
    items[j] = held;
  }
  return items;
}
