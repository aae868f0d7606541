import { below, type Chance, uniform } from '../../src/statistics/random/chance.ts';
import { slipKinds } from './assumptions.ts';

/** A code as somebody typed it who slipped once. Never the code itself. */
export function slip(code: string, chance: Chance): string {
  for (let tries = 0; tries < 50; tries += 1) {
    const typed = once(code, chance);
    if (typed !== code) return typed;
  }
  return `${code}0`;
}

const DIGITS = '0123456789';

function once(code: string, chance: Chance): string {
  const total = Object.values(slipKinds).reduce((sum, each) => sum + each, 0);
  let drawn = uniform(chance) * total;
  const at = below(chance, code.length);
  const sign = (i: number) => code.charAt(i);
  if ((drawn -= slipKinds.substitution) < 0) {
    return code.slice(0, at) + DIGITS.charAt(below(chance, 10)) + code.slice(at + 1);
  }
  if ((drawn -= slipKinds.adjacent) < 0) {
    return code.slice(0, at) + sign(at + 1) + sign(at) + code.slice(at + 2);
  }
  if ((drawn -= slipKinds.jump) < 0) {
    return code.slice(0, at) + sign(at + 2) + sign(at + 1) + sign(at) + code.slice(at + 3);
  }
  if (sign(at) !== sign(at + 1)) return code;
  const other = DIGITS.charAt(below(chance, 10));
  return code.slice(0, at) + other + other + code.slice(at + 2);
}
