import type { Counted, TabletHand } from './tablet-hand.ts';

type Part = 'bedside' | 'pack table' | 'registering' | 'result' | 'acting';

/** What each person of a round costs the writer's hands, from the due list to the result acted on. */
export class ChainCount {
  readonly #hand: () => TabletHand;
  readonly #people = new Map<string, Map<Part, Counted>>();
  /** What is done once for everybody: prepared, shut, handed over. */
  readonly shared: Counted = { taps: 0, scans: 0, characters: 0 };

  constructor(hand: () => TabletHand) {
    this.#hand = hand;
  }

  async of<T>(who: string, part: Part, doing: () => Promise<T>): Promise<T> {
    const parts = this.#people.get(who) ?? new Map<Part, Counted>();
    this.#people.set(who, parts);
    const counted = parts.get(part) ?? { taps: 0, scans: 0, characters: 0 };
    parts.set(part, counted);
    return this.#into(counted, doing);
  }

  forAll<T>(doing: () => Promise<T>): Promise<T> {
    return this.#into(this.shared, doing);
  }

  async #into<T>(counted: Counted, doing: () => Promise<T>): Promise<T> {
    const before = { ...this.#hand().counted };
    const done = await doing();
    for (const what of ['taps', 'scans', 'characters'] as const) {
      counted[what] += this.#hand().counted[what] - before[what];
    }
    return done;
  }

  /** One part of one person. */
  part(who: string, part: Part): Counted {
    const none = { taps: 0, scans: 0, characters: 0 };
    return this.#people.get(who)?.get(part) ?? none;
  }

  /** All parts of one person together, without what is shared. */
  whole(who: string): Counted {
    const sum = { taps: 0, scans: 0, characters: 0 };
    for (const counted of this.#people.get(who)?.values() ?? []) {
      for (const what of ['taps', 'scans', 'characters'] as const) sum[what] += counted[what];
    }
    return sum;
  }

  /** A line for each person: the bedside by itself, then the whole chain with each of its parts. */
  lines(): string[] {
    return [
      ...[...this.#people].map(([who, parts]) => {
        const each = [...parts].map(([part, counted]) => `${part} ${said(counted)}`).join('; ');
        const bedside = said(this.part(who, 'bedside'));
        return `${who}: bedside ${bedside} | whole chain ${said(this.whole(who))} (${each})`;
      }),
      `Once for the round: ${said(this.shared)}`,
    ];
  }
}

const said = ({ taps, scans, characters }: Counted): string =>
  `${taps} taps, ${scans} scans, ${characters} characters`;
