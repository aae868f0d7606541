import { after, MINUTE, momentOf } from '../../../care/time.ts';
import { pairRefusal } from '../../../procedures/take-swab/start.ts';
import { namesIn } from '../../desk/names.ts';
import { sayRefusal } from '../../desk/say-refusal.ts';
import type { FormProblem } from '../../pieces/form/error-summary.tsx';
import type { AllWords } from '../../words/en-all.ts';
import { isOn } from './listed.ts';
import type { PrepareStep } from './steps.ts';
import type { Prepare } from './use-prepare.ts';

/** What has to be put right before one goes on from a step. */
export function wrongAt(step: PrepareStep, prepare: Prepare, words: AllWords): FormProblem[] {
  switch (step) {
    case 'when':
      return wrongWhen(prepare, words);
    case 'who':
      return wrongWho(prepare, words);
    case 'order':
    case 'check':
      return [];
  }
}

function wrongWhen({ draft, desk }: Prepare, words: AllWords): FormProblem[] {
  const { fill } = words.prepare;
  const empty: FormProblem[] = (['courier', 'swabber', 'recorder'] as const)
    .filter((field) => draft[field] === '')
    .map((field) => ({ field, text: fill[field] }));
  const { day, swabber, recorder } = draft;
  if (empty.length > 0 || swabber === '' || recorder === '') return empty;
  const refusal = pairRefusal(desk.home, { swabber, recorder }, day);
  if (refusal === undefined) return [];
  return [{ field: 'swabber', text: sayRefusal(refusal, { words, home: desk.home }) }];
}

function wrongWho({ draft, candidates, places, desk }: Prepare, words: AllWords): FormProblem[] {
  const names = namesIn(desk.home, words.refusals.somebody);
  const unsaid = candidates
    .filter(
      (each) =>
        each.group === 'due' && !isOn(draft, each) && draft.reasons[each.person] === undefined,
    )
    .map(({ person }) => ({
      field: `why-${person}`,
      text: words.prepare.sayWhy(names.person(person)),
    }));
  const nobody = places.length === 0 ? [{ field: 'who', text: words.refusals.nobodyChosen }] : [];
  return [...nobody, ...unsaid];
}

/** By when every bag has to lie on the pack table; undefined while the time is being typed. */
export const packBy = ({ draft, desk }: Prepare) =>
  draft.courier === ''
    ? undefined
    : after(
        momentOf(draft.day, draft.courier, desk.home.service.zone),
        -draft.packMinutes * MINUTE,
      );
