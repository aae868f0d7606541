import { given, type Outcome, refuse } from '../refusal/refusal.ts';
import { type CheckScheme, payloadValues } from './scheme.ts';

const LETTER_VALUE_SCHEMES = new Set(['iso7064-mod97-10']);

/** In MOD 97-10 a letter stands for two digits: A is 10, Z is 35 (as in ISO 13616 and ISO 17442). */
const lettersAsDigits = (payload: string): string =>
  payload.replace(/[A-Z]/g, (letter) => String(letter.charCodeAt(0) - 55));

const normalise = (scheme: CheckScheme, payload: string): string =>
  LETTER_VALUE_SCHEMES.has(scheme.name) ? lettersAsDigits(payload) : payload;

function runFrom(scheme: CheckScheme, values: readonly number[]): number {
  const last = values.length + scheme.checkLength - 1;
  return values.reduce((state, value, i) => scheme.step(state, value, last - i), scheme.start);
}

/** The check places that lead from a state to acceptance. */
function completion(scheme: CheckScheme, state: number): string | undefined {
  const size = scheme.checkAlphabet.length;
  if (scheme.checkLength === 1) {
    for (let value = 0; value < size; value++) {
      if (scheme.step(state, value, 0) === scheme.accept) return scheme.checkAlphabet[value];
    }
    return undefined;
  }
  // Two places: of two answers, the standard takes the larger (MOD 97-10 gives 02 to 98).
  for (let pair = size * size - 1; pair >= 0; pair--) {
    const [tens, ones] = [Math.floor(pair / size), pair % size];
    if (
      scheme.step(scheme.step(state, tens, 1), ones, 0) === scheme.accept &&
      pair <= scheme.states + 1
    ) {
      return `${scheme.checkAlphabet.charAt(tens)}${scheme.checkAlphabet.charAt(ones)}`;
    }
  }
  return undefined;
}

/**
 * The check character or characters of a payload. A payload that the scheme leaves without one (an
 * NHS number that would need a 10) is refused as 'undefined'.
 * @example checkCharacters(luhn, '7992739871') // '3'
 */
export function checkCharacters(scheme: CheckScheme, payload: string): Outcome<string> {
  const values = payloadValues(scheme, normalise(scheme, payload));
  if ('ok' in values) return values;
  const check = completion(scheme, runFrom(scheme, values));
  return check === undefined
    ? refuse(
        'undefined',
        `${scheme.name} gives "${payload}" no check character: such a number is not issued.`,
      )
    : given(check);
}

/** Whether a whole code, check characters at its end, is right. False for foreign characters. */
export function passesCheck(scheme: CheckScheme, code: string): boolean {
  const payload = code.slice(0, -scheme.checkLength);
  const check = code.slice(-scheme.checkLength);
  const values = payloadValues(scheme, normalise(scheme, payload));
  if ('ok' in values || check.length < scheme.checkLength) return false;
  let state = runFrom(scheme, values);
  for (const [i, character] of Array.from(check).entries()) {
    const value = scheme.checkAlphabet.indexOf(character);
    if (value < 0) return false;
    state = scheme.step(state, value, scheme.checkLength - 1 - i);
  }
  return state === scheme.accept;
}
