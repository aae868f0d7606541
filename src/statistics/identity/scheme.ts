import { type Refusal, refuse } from '../refusal/refusal.ts';

/**
 * A check-digit scheme as a machine that reads a whole code, check characters included, from left
 * to right. One description serves to make check characters, to test codes and to count exactly
 * which errors get through.
 */
export interface CheckScheme {
  readonly name: string;
  /** The published source. */
  readonly source: string;
  /** The characters a payload may have, in order of value. */
  readonly alphabet: string;
  /** The characters a check place may have, in order of value. */
  readonly checkAlphabet: string;
  readonly checkLength: number;
  /** About one in so many random codes passes. */
  readonly oneIn: number;
  /** The only payload length allowed, where the scheme has one. */
  readonly payloadLength?: number;
  readonly states: number;
  readonly start: number;
  readonly accept: number;
  /** `place` counts from the right, 0 being the last check character. */
  readonly step: (state: number, value: number, place: number) => number;
  /** True when two different states never meet again on the same further characters. */
  readonly reversible: boolean;
}

/** The values of a payload's characters, or which character is not one of the scheme's. */
export function payloadValues(scheme: CheckScheme, payload: string): readonly number[] | Refusal {
  if (payload === '')
    return refuse('empty', `A payload for ${scheme.name} needs at least one character.`);
  if (scheme.payloadLength !== undefined && payload.length !== scheme.payloadLength) {
    return refuse(
      'out-of-range',
      `${scheme.name} takes ${scheme.payloadLength} characters, and "${payload}" has ${payload.length}.`,
    );
  }
  const values: number[] = [];
  for (const [i, character] of Array.from(payload).entries()) {
    const value = scheme.alphabet.indexOf(character);
    if (value < 0)
      return refuse(
        'unknown-character',
        `Character ${i + 1} of "${payload}", "${character}", is not used by ${scheme.name}.`,
      );
    values.push(value);
  }
  return values;
}
