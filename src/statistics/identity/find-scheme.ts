import { given, type Outcome, refuse } from '../refusal/refusal.ts';
import * as iso from './iso7064-schemes.ts';
import type { CheckScheme } from './scheme.ts';
import { damm, upuS10, verhoeff } from './table-schemes.ts';
import { code39Mod43, gs1Mod10, isbn10, luhn, mod11, nhsNumber } from './weighted-schemes.ts';

export const CHECK_SCHEMES: readonly CheckScheme[] = [
  luhn,
  gs1Mod10,
  iso.mod11and2,
  iso.mod37and2,
  iso.mod97and10,
  iso.mod661and26,
  iso.mod1271and36,
  iso.mod11and10,
  iso.mod27and26,
  iso.mod37and36,
  verhoeff,
  damm,
  upuS10,
  nhsNumber,
  isbn10,
  mod11,
  code39Mod43,
];

// Other names in use for the same schemes, written as `plain` leaves them.
const ALIASES: Readonly<Record<string, string>> = {
  mod10: 'luhn',
  luhnmod10: 'luhn',
  iso7812: 'luhn',
  isoiec7812: 'luhn',
  gs1: 'gs1-mod10',
  gs1mod103: 'gs1-mod10',
  ean: 'gs1-mod10',
  ean8: 'gs1-mod10',
  ean13: 'gs1-mod10',
  upca: 'gs1-mod10',
  upc: 'gs1-mod10',
  gtin: 'gs1-mod10',
  gtin8: 'gs1-mod10',
  gtin12: 'gs1-mod10',
  gtin13: 'gs1-mod10',
  gtin14: 'gs1-mod10',
  sscc: 'gs1-mod10',
  mod10weight3: 'gs1-mod10',
  isbn13: 'gs1-mod10',
  isni: 'iso7064-mod11-2',
  orcid: 'iso7064-mod11-2',
  isbt128: 'iso7064-mod37-2',
  isbt: 'iso7064-mod37-2',
  s10: 'upu-s10',
  upu: 'upu-s10',
  isbn: 'isbn10',
  isbnmod11: 'isbn10',
  nhs: 'nhs-mod11',
  nhsnumber: 'nhs-mod11',
  mod11nhs: 'nhs-mod11',
  nhsnumbermod11: 'nhs-mod11',
  code39: 'code39-mod43',
  mod43: 'code39-mod43',
  code39mod43: 'code39-mod43',
};

/** Lower case, letters and figures only; ISO 7064 systems with or without the standard's name. */
function plain(name: string): string {
  const letters = name
    .toLowerCase()
    .replace(/modul(?:o|us)/g, 'mod')
    .replace(/[^a-z0-9]/g, '');
  return letters.replace(/^(?:isoiec|iso)?7064/, '');
}

const BY_NAME = new Map(CHECK_SCHEMES.map((scheme) => [plain(scheme.name), scheme]));
for (const [alias, name] of Object.entries(ALIASES)) {
  const scheme = BY_NAME.get(plain(name));
  if (scheme && !BY_NAME.has(alias)) BY_NAME.set(alias, scheme);
}

/** A check-digit scheme by name; spelling of separators and capitals does not matter. */
export function findScheme(name: string): Outcome<CheckScheme> {
  const scheme = BY_NAME.get(plain(name));
  return scheme
    ? given(scheme)
    : refuse(
        'unknown-scheme',
        `There is no check-digit scheme "${name}". Known: ${CHECK_SCHEMES.map((s) => s.name).join(', ')}.`,
      );
}
