/** One number that the experiment rests on, with where it is from. */
export interface Assumption {
  readonly value: number;
  readonly what: string;
  readonly source: string;
}

const NO_SOURCE = 'Our assumption, no source. See the table of what happens when it is wrong.';

/** Human slips, per test unless it says otherwise. Hospital figures where there are any: no care home has published its own. */
export const assumptions = {
  wrongPerson: {
    value: 1 / 2000,
    what: 'The person swabbed is not the one whose turn it is',
    source:
      'Wrong blood in tube, about 1 in 2,000: Dzik and others 2003, Vox Sanguinis 85:40, from memory.',
  },
  mislabelled: {
    value: 6.1 / 1000,
    what: "A tube bears a sticker that is not its own kit's",
    source: 'Mislabelled samples, median of 62 hospitals, 6.1 per 1,000: Dzik and others 2003.',
  },
  crossed: {
    value: 0.5,
    what: 'Of those, the share in which two neighbours have each the other’s sticker; the rest is one leftover sticker',
    source: NO_SOURCE,
  },
  typingSlip: {
    value: 0.01,
    what: 'A code typed once is wrong',
    source: 'About 1 in 100 fields in single data entry: common in the literature, from memory.',
  },
  sameSlipTwice: {
    value: 0.05,
    what: 'Of those, the share in which a second, blind try is wrong in the same way',
    source: NO_SOURCE,
  },
  typedAtBedside: {
    value: 0.02,
    what: 'A code at the bedside is typed, since the scanner or the label fails',
    source: NO_SOURCE,
  },
  typedResult: {
    value: 1,
    what: 'The code of a result is typed, not read from a file',
    source: 'The worst case: results that come in a file are not typed at all.',
  },
  fromMemory: {
    value: 0.05,
    what: 'The birthday is picked from memory, without asking',
    source: NO_SOURCE,
  },
  proxyScan: {
    value: 0.02,
    what: 'The sheet of stickers is scanned instead of the sticker on the tube or bag',
    source: 'Seen in practice (Koppel and others 2008, JAMIA 15:408); how often is our assumption.',
  },
  proxyAgain: {
    value: 0.5,
    what: 'A pair that has just scanned the sheet does so at the next tube or bag too',
    source: NO_SOURCE,
  },
  bagToo: {
    value: 0.5,
    what: 'Where the tube bears a wrong sticker, the bag bears the same wrong one',
    source: NO_SOURCE,
  },
  misTap: {
    value: 1 / 500,
    what: 'The wrong choice is tapped though the right person is there',
    source: NO_SOURCE,
  },
} as const satisfies Record<string, Assumption>;

export type Rates = { readonly [K in keyof typeof assumptions]: number };

export const rates: Rates = Object.fromEntries(
  Object.entries(assumptions).map(([name, { value }]) => [name, value]),
) as Rates;

/**
 * How typed codes go wrong, in per cent of slips: Verhoeff 1969 (Error detecting decimal codes), the
 * table as widely quoted, from memory. What he counts as other is left out.
 */
export const slipKinds = { substitution: 79, adjacent: 10.2, jump: 0.8, twin: 0.6 } as const;
