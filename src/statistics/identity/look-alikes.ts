/**
 * Signs that eyes take for one another on a small label, each written as the first of its group.
 * Groups: common practice in the making of codes, no source; ISMP's list of confused letters and
 * figures names the same ones (0/O, 1/l/I, 5/S, 8/B; from memory).
 */
const GROUPS = ['0O', '1Il', '5S', '8B'] as const;

const FOLDED = new Map(GROUPS.flatMap((group) => Array.from(group, (sign) => [sign, group[0]])));

/** A code with every look-alike written the same: two codes with one shape look the same in haste. */
export const shapeOf = (code: string): string =>
  Array.from(code, (sign) => FOLDED.get(sign) ?? sign).join('');
