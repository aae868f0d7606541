import type { FormProblem } from '../pieces/form/error-summary.tsx';
import type { Words } from '../words/en.ts';
import type { Texts } from './moved.ts';
import { moved } from './moved.ts';

interface Typed<Fields> {
  readonly start: Fields;
  readonly value: Fields;
  readonly begin: (start: Fields) => void;
}

/**
 * Told once: what somebody else changed while this form was open. From then on the form starts from
 * what the record says now, so that keeping again is a choice made with open eyes.
 */
export function movedProblems<Fields extends Texts<Fields>>(
  draft: Typed<Fields>,
  now: Fields,
  { keeping }: Words,
): FormProblem[] {
  const fields = moved(draft, now);
  if (fields.length > 0) draft.begin(now);
  return fields.map((field) => ({
    field,
    text: now[field] === '' ? keeping.movedToNothing : keeping.movedOn(now[field].slice(0, 80)),
  }));
}
