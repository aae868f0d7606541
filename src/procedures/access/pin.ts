/** Why a new PIN may not be set. */
export type PinFault = 'not-digits' | 'too-short' | 'too-long' | 'too-plain' | 'same-as-before';

const SHORTEST_PIN = 6;
const LONGEST_PIN = 12;

/** What is wrong with a new PIN; undefined when it may be set. */
export function pinFault(pin: string): PinFault | undefined {
  if (!/^\d*$/.test(pin)) return 'not-digits';
  if (pin.length < SHORTEST_PIN) return 'too-short';
  if (pin.length > LONGEST_PIN) return 'too-long';
  return isPlain(pin) ? 'too-plain' : undefined;
}

/** The first that a colleague would try: 111111, 123456, 987654, 121212, 123123, 112233. */
function isPlain(pin: string): boolean {
  return repeats(pin) || steps(pin) || pairs(pin);
}

/** One block of up to half the length, over and over. */
function repeats(pin: string): boolean {
  for (let size = 1; size <= pin.length / 2; size++)
    if (pin.length % size === 0 && pin === pin.slice(0, size).repeat(pin.length / size))
      return true;
  return false;
}

/** Up or down by one all the way, 9 and 0 being neighbours as on a keypad. */
function steps(pin: string): boolean {
  const digits = Array.from(pin, Number);
  const gaps = new Set(digits.slice(1).map((digit, i) => (digit - (digits[i] ?? 0) + 10) % 10));
  return gaps.size === 1 && (gaps.has(1) || gaps.has(9));
}

/** Each digit twice, the digits in steps: 112233, 998877. */
function pairs(pin: string): boolean {
  return /^(?:(\d)\1)+$/.test(pin) && steps(pin.replace(/(.)./g, '$1'));
}

/** What somebody types to say who they are, brought to one form before it is compared. */
export const foldName = (typed: string): string =>
  typed.normalize('NFKC').trim().replace(/\s+/g, ' ').toLowerCase();
