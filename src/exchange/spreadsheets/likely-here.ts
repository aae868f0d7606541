/** Somebody already on record. */
export interface Known {
  readonly name: string;
  readonly born?: string | undefined;
  readonly identifier?: string | undefined;
}

export type Likeness =
  /** The same name and the same birth date. */
  | 'same-name-and-birth'
  | 'same-identifier'
  /** The same name, and one of the two has no birth date to tell them apart. */
  | 'same-name';

/** A name without case, accents, signs and order: "Vale, Corwen" and "corwen VALE" are one. */
const nameKey = (name: string): string =>
  name
    .normalize('NFKD')
    .replaceAll(/\p{M}/gu, '')
    .toLocaleLowerCase('en')
    .split(/[^\p{L}\p{N}]+/u)
    .filter(Boolean)
    .sort()
    .join(' ');

const identifierKey = (identifier = ''): string =>
  identifier.replaceAll(/[\s-]+/g, '').toUpperCase();

/** Whoever on record is most likely the same as this one, and why. */
export function likelyHere<K extends Known>(
  known: readonly K[],
  one: Known,
): { readonly known: K; readonly why: Likeness } | undefined {
  const number = identifierKey(one.identifier);
  const sameNumber =
    number === '' ? undefined : known.find((each) => identifierKey(each.identifier) === number);
  if (sameNumber !== undefined) return { known: sameNumber, why: 'same-identifier' };
  const named = known.filter((each) => nameKey(each.name) === nameKey(one.name));
  const born = named.find((each) => !!one.born && each.born === one.born);
  if (born !== undefined) return { known: born, why: 'same-name-and-birth' };
  const open = named.find((each) => !one.born || !each.born);
  return open && { known: open, why: 'same-name' };
}
