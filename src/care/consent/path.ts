import type { Authority, Conclusion, Limb, Part, Start, Told } from './facts.ts';
import { limbs, told } from './facts.ts';
import type { PackQuestion, RulePack } from './rule-pack.ts';

/** A record as it is being written. What nobody has answered is empty; nothing is ever filled in. */
export interface DecisionAnswers {
  readonly start: Start | '';
  readonly conclusion: Conclusion | '';
  readonly authority: Authority | '';
  readonly told: readonly Told[];
  readonly limbs: Readonly<Record<Limb, 'can' | 'cannot' | ''>>;
  readonly document: 'seen' | 'not-seen' | '';
  readonly texts: Readonly<Record<Part, string>>;
}

/** One thing asked on a page of its own. */
export type Ask =
  | { readonly ask: 'start' }
  | { readonly ask: 'conclusion'; readonly options: readonly Conclusion[] }
  | { readonly ask: 'authority'; readonly options: readonly Authority[] }
  | { readonly ask: 'part'; readonly part: Part; readonly section: string };

type Phase = 'first' | 'begun' | 'concluded' | 'decided';

/**
 * When a question can be known to belong to the path: after the last answer that it hangs on. So no answer
 * ever puts a question before the one that is on the screen.
 */
function phaseOf({ when }: PackQuestion): Phase {
  if (when?.authority !== undefined) return 'decided';
  if (when?.conclusion !== undefined) return 'concluded';
  return when?.start === undefined ? 'first' : 'begun';
}

/**
 * What has to be asked on the path that the answers so far have taken, in order. It asks only what the
 * path needs: somebody whose capacity nobody doubts is not examined.
 */
export function asksFor(pack: RulePack, given: DecisionAnswers): readonly Ask[] {
  const answers = onPath(pack, given);
  const asked = pack.questions.filter((question) => applies(question, answers));
  const of = (phase: Phase): Ask[] =>
    asked
      .filter((question) => phaseOf(question) === phase)
      .map(({ part, section }) => ({ ask: 'part', part, section }));
  const start = pack.starts.find((each) => each.start === answers.start);
  const conclusions = start?.conclusions ?? [];
  return [
    ...of('first'),
    { ask: 'start' },
    ...of('begun'),
    ...(conclusions.length > 0 ? [{ ask: 'conclusion', options: conclusions } as const] : []),
    ...of('concluded'),
    { ask: 'authority', options: authoritiesFor(pack, answers) },
    ...of('decided'),
  ];
}

/** An answer that the path did not lead to, left over from before somebody turned back, counts for nothing. */
function onPath(pack: RulePack, answers: DecisionAnswers): DecisionAnswers {
  const began = pack.starts.find(({ start }) => start === answers.start);
  const { conclusion, authority } = answers;
  const reached = conclusion !== '' && began?.conclusions.includes(conclusion) === true;
  const path = { ...answers, conclusion: reached ? conclusion : ('' as const) };
  const word = authority !== '' && authoritiesFor(pack, path).includes(authority);
  return { ...path, authority: word ? authority : '' };
}

/** On whose word it can be, given where the record began and what was concluded. */
export function authoritiesFor(
  pack: RulePack,
  { start, conclusion }: Pick<DecisionAnswers, 'start' | 'conclusion'>,
): readonly Authority[] {
  const began = pack.starts.find((each) => each.start === start);
  if (began === undefined) return [];
  if (began.conclusions.length === 0) return began.authorities;
  if (conclusion === '' || !began.conclusions.includes(conclusion)) return [];
  return pack.conclusions.find((each) => each.conclusion === conclusion)?.authorities ?? [];
}

function applies({ when }: PackQuestion, answers: DecisionAnswers): boolean {
  const holds = <T extends string>(list: readonly T[] | undefined, given: T | ''): boolean =>
    list === undefined || (given !== '' && list.includes(given));
  return (
    holds(when?.start, answers.start) &&
    holds(when?.conclusion, answers.conclusion) &&
    holds(when?.authority, answers.authority)
  );
}

/** Why a record cannot stand yet, and at which question. */
export interface Lack {
  readonly at: Part | 'start' | 'conclusion' | 'authority';
  readonly why:
    | 'unanswered'
    | 'not-told'
    | 'limb-unanswered'
    | 'document-unsaid'
    | 'does-not-follow';
}

const isLimb = (part: Part): part is Limb => (limbs as readonly Part[]).includes(part);

/** Everything that the pack demands on this path and that is not there, in the order it is asked. */
export const lacksIn = (pack: RulePack, answers: DecisionAnswers): readonly Lack[] =>
  asksFor(pack, answers).flatMap((ask) => lackAt(pack, answers, ask));

export function lackAt(pack: RulePack, answers: DecisionAnswers, ask: Ask): readonly Lack[] {
  switch (ask.ask) {
    case 'start':
      return pack.starts.some(({ start }) => start === answers.start)
        ? []
        : [{ at: 'start', why: 'unanswered' }];
    case 'conclusion':
      return concluded(pack, answers, ask.options);
    case 'authority':
      return answers.authority !== '' && ask.options.includes(answers.authority)
        ? []
        : [{ at: 'authority', why: 'unanswered' }];
    case 'part':
      return partLacks(ask.part, answers);
  }
}

function concluded(
  pack: RulePack,
  answers: DecisionAnswers,
  options: readonly Conclusion[],
): Lack[] {
  const { conclusion } = answers;
  if (conclusion === '' || !options.includes(conclusion))
    return [{ at: 'conclusion', why: 'unanswered' }];
  const demand = pack.conclusions.find((each) => each.conclusion === conclusion)?.limbs;
  const cannot = limbs.some((limb) => answers.limbs[limb] === 'cannot');
  const follows = demand === undefined || cannot === (demand === 'some-cannot');
  return follows ? [] : [{ at: 'conclusion', why: 'does-not-follow' }];
}

function partLacks(part: Part, answers: DecisionAnswers): Lack[] {
  if (answers.texts[part].trim() === '') return [{ at: part, why: 'unanswered' }];
  if (part === 'information' && told.some((each) => !answers.told.includes(each)))
    return [{ at: part, why: 'not-told' }];
  if (isLimb(part) && answers.limbs[part] === '') return [{ at: part, why: 'limb-unanswered' }];
  if (part === 'document' && answers.document === '') return [{ at: part, why: 'document-unsaid' }];
  return [];
}

/** Takes out what the path did not ask: an answer given before turning back is no part of the record. */
export function onlyAsked(pack: RulePack, given: DecisionAnswers): DecisionAnswers {
  const answers = onPath(pack, given);
  const parts = new Set(
    asksFor(pack, answers).flatMap((ask) => (ask.ask === 'part' ? ask.part : [])),
  );
  const texts = Object.fromEntries(
    Object.entries(answers.texts).map(([part, text]) => [
      part,
      parts.has(part as Part) ? text : '',
    ]),
  ) as Record<Part, string>;
  return {
    ...answers,
    texts,
    document: parts.has('document') ? answers.document : '',
    limbs: Object.fromEntries(
      limbs.map((limb) => [limb, parts.has(limb) ? answers.limbs[limb] : '']),
    ) as DecisionAnswers['limbs'],
  };
}
