import type { FormProblem } from '../../pieces/form/error-summary.tsx';
import type { AllWords } from '../../words/en-all.ts';
import type { Told } from './list-kind.ts';
import type { Questions } from './reading.ts';

/** What has to be said before the rows can be read. */
export function openQuestions(
  questions: Questions,
  told: Told,
  { importing }: AllWords,
): FormProblem[] {
  const { map } = importing;
  const { name, given, family } = told.columns;
  const problems: FormProblem[] = [];
  if (name === undefined && given === undefined && family === undefined)
    problems.push({ field: 'column-name', text: map.nameNeeded });
  if (questions.dates !== undefined && told.dateForm === undefined)
    problems.push({ field: 'dates', text: map.dateNeeded });
  if (questions.commaName !== undefined && told.nameForm === undefined)
    problems.push({ field: 'names', text: map.nameFormNeeded });
  for (const word of questions.jobs) {
    if (!told.roles.has(word)) problems.push({ field: `job-${word}`, text: map.roleNeeded(word) });
  }
  return problems;
}
