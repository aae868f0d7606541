import type { FormProblem } from '../pieces/form/error-summary.tsx';

/** Everything that is missing, at once: one trip to put all of it right. */
export const missing = (
  fields: Readonly<Record<string, string | readonly unknown[]>>,
  text: string,
): FormProblem[] =>
  Object.entries(fields)
    .filter(([, value]) => (typeof value === 'string' ? value.trim() === '' : value.length === 0))
    .map(([field]) => ({ field, text }));
