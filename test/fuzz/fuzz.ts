import fc from 'fast-check';

/** How many cases a parser is thrown at: a few here, `TALLYROUND_FUZZ=100000` in the long run. */
const runs = Number(process.env['TALLYROUND_FUZZ'] ?? 2000);
/** Longest a parser may take over one input, in ms. */
const LONGEST_MS = 10;

/** What a broken scanner, a wrong symbol or a stranger could send. */
const anyScan: fc.Arbitrary<string> = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 400 }),
  fc.string({ unit: 'binary-ascii', maxLength: 400 }),
  fc.string({ unit: 'grapheme', maxLength: 200 }),
  fc.string({ unit: fc.constantFrom(...Array.from('0123456789\u001d()')), maxLength: 400 }),
  fc
    .tuple(fc.constantFrom('01', '10', '17', '21', '(01)', 'https://x/01/', ']C1', ''), fc.string())
    .map(([start, rest]) => start + rest),
  fc
    .tuple(fc.string({ maxLength: 8 }), fc.integer({ min: 1, max: 4000 }))
    .map(([s, n]) => s.repeat(n).slice(0, 4000)),
);

/** Nothing is thrown and nothing hangs; fast-check prints the seed and the smallest case that fails. */
export function neverThrowsNorHangs(parse: (input: string) => unknown): void {
  fc.assert(
    fc.property(anyScan, (input) => {
      // The shortest of three tries: a shared machine may hold any one of them up.
      let took = Infinity;
      for (let tries = 0; tries < 3 && took > LONGEST_MS; tries += 1) {
        const from = performance.now();
        parse(input);
        took = Math.min(took, performance.now() - from);
      }
      return took <= LONGEST_MS;
    }),
    { numRuns: runs },
  );
}
