import type { Code } from '../src/care/kind.ts';
import type { Chance } from './chance.ts';

/**
 * Codes of the demo's own kits: three letters, seven digits, and the check character of ISO/IEC 7064
 * MOD 11-2 over the digits. Consecutive, as kits in a box are.
 */
export function kitCodes(chance: Chance, count: number): Code[] {
  const first = chance.whole(1_000_000, 8_000_000);
  return Array.from({ length: count }, (_, i) => {
    const digits = String(first + i * 3);
    return `WSK${digits}${checkOf(digits)}` as Code;
  });
}

function checkOf(digits: string): string {
  const p = Array.from(digits).reduce((sum, digit) => ((sum + Number(digit)) * 2) % 11, 0);
  const check = (12 - p) % 11;
  return check === 10 ? 'X' : String(check);
}
