import { plainCode } from './code-groups.ts';

/** A code typed by hand, twice, the second time without sight of the first. */
export type TypeTwice =
  | { readonly at: 'first'; readonly trouble: Trouble | undefined }
  | { readonly at: 'again'; readonly first: string; readonly trouble: Trouble | undefined };

export type Trouble =
  | { readonly kind: 'short'; readonly least: number }
  | { readonly kind: 'differ'; readonly place: number }
  | { readonly kind: 'length' };

export interface TypeStep {
  readonly state: TypeTwice;
  /** The code, once both agree. */
  readonly code: string | undefined;
}

export const typeStart: TypeTwice = { at: 'first', trouble: undefined };

/** Takes what has been typed in the field now on screen. */
export function typeEntry(state: TypeTwice, typed: string, least: number): TypeStep {
  const code = plainCode(typed);
  if (code.length < least) {
    return { state: { ...state, trouble: { kind: 'short', least } }, code: undefined };
  }
  if (state.at === 'first') {
    return { state: { at: 'again', first: code, trouble: undefined }, code: undefined };
  }
  const trouble = difference(state.first, code);
  return trouble === undefined
    ? { state: typeStart, code }
    : { state: { at: 'first', trouble }, code: undefined };
}

/** Where two codes part, counted from one; undefined where they agree. */
function difference(first: string, again: string): Trouble | undefined {
  if (first === again) return undefined;
  if (first.length !== again.length) return { kind: 'length' };
  const place = Array.from(first).findIndex((sign, i) => sign !== again[i]) + 1;
  return { kind: 'differ', place };
}
