/** Signs that part the cells of a row. Which one is used depends on the country a computer is set to. */
export const separators = [',', ';', '\t'] as const;
export type Separator = (typeof separators)[number];

/**
 * The separator that stands most often outside quotes in the first rows; a comma where none does. It
 * is shown with the preview, so that somebody can pick another.
 */
export function guessSeparator(text: string): Separator {
  const counts = new Map<string, number>(separators.map((each) => [each, 0]));
  let quoted = false;
  let rows = 0;
  for (const sign of text.slice(0, 20_000)) {
    if (sign === '"') quoted = !quoted;
    if (quoted) continue;
    if (sign === '\n' && ++rows === 10) break;
    const count = counts.get(sign);
    if (count !== undefined) counts.set(sign, count + 1);
  }
  return separators.reduce((best, each) =>
    (counts.get(each) ?? 0) > (counts.get(best) ?? 0) ? each : best,
  );
}
