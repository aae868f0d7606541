import type { KitKind, Policy } from '../../care/policy/policy.ts';
import type { Day } from '../../care/time.ts';
import { passesCheck } from '../../statistics/identity/check-characters.ts';
import { gs1Mod10 } from '../../statistics/identity/weighted-schemes.ts';
import { isAddress, readDigitalLink } from './digital-link.ts';
import type { Element, ReadElements, Unreadable } from './element-string.ts';
import { readElements } from './element-string.ts';
import { gs1Day } from './gs1-date.ts';

/** What the barcode of a box or a kit says about itself. */
export interface Box {
  /** 14 digits. */
  readonly gtin: string;
  /** The kind of kit that policy gives this number to. */
  readonly kit: KitKind | undefined;
  readonly lot: string | undefined;
  /** Usable through this day. */
  readonly expires: Day | undefined;
  readonly made: Day | undefined;
  readonly serial: string | undefined;
}

export type ReadBox =
  | { readonly ok: true; readonly box: Box }
  | {
      readonly ok: false;
      readonly reason: Unreadable | 'no-product' | 'not-a-day';
      readonly at: number;
    };

/**
 * Reads one scan of a delivery: a GS1 element string, a Digital Link, or the plain product number of an
 * EAN or UPC symbol. Nothing is guessed: what is missing stays undefined for staff to fill in.
 */
export function readBox(policy: Policy, scan: string, today: Day): ReadBox {
  const product = productNumber(scan.trim());
  if (product !== undefined) return told(policy, { '01': product }, today);
  const read: ReadElements = isAddress(scan) ? readDigitalLink(scan) : readElements(scan);
  if (!read.ok) return read;
  const value = (ai: string) => read.elements.find((each: Element) => each.ai === ai)?.value;
  return told(policy, Object.fromEntries(WANTED.map((ai) => [ai, value(ai)])), today);
}

const WANTED = ['01', '10', '11', '17', '21'] as const;

/** EAN-8, UPC-A, EAN-13 and ITF-14 carry the product number alone. */
function productNumber(scan: string): string | undefined {
  const digits = scan.replace(/^\](?:E[0-4]|I[01])/, '');
  if (!/^(?:\d{8}|\d{12,14})$/.test(digits)) return undefined;
  return passesCheck(gs1Mod10, digits) ? digits.padStart(14, '0') : undefined;
}

function told(
  policy: Policy,
  values: Readonly<Record<string, string | undefined>>,
  today: Day,
): ReadBox {
  const gtin = values['01'];
  if (gtin === undefined) return { ok: false, reason: 'no-product', at: 0 };
  const [made, expires] = [values['11'], values['17']].map((digits) =>
    digits === undefined ? undefined : (gs1Day(digits, today) ?? 'no day'),
  );
  if (made === 'no day' || expires === 'no day') return { ok: false, reason: 'not-a-day', at: 0 };
  const kit = policy.kits.find((each) => each.gtin?.padStart(14, '0') === gtin);
  return { ok: true, box: { gtin, kit, lot: values['10'], expires, made, serial: values['21'] } };
}
