import { positive, positiveCount } from '../refusal/checks.ts';
import type { Refusal } from '../refusal/refusal.ts';

/**
 * How long people are infectious. 'erlang' is a gamma with a whole shape: shape 1 is exponential.
 * The latent period does not matter: it cannot change a final size.
 */
export type InfectiousPeriod =
  | { readonly law: 'exponential'; readonly mean: number }
  | { readonly law: 'fixed'; readonly mean: number }
  | { readonly law: 'erlang'; readonly mean: number; readonly shape: number };

export const checkInfectiousPeriod = (period: InfectiousPeriod): Refusal | undefined =>
  positive('mean infectious period', period.mean) ??
  (period.law === 'erlang'
    ? positiveCount('shape of the infectious period', period.shape)
    : undefined);
