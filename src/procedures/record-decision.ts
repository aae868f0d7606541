import type { Part } from '../care/consent/facts.ts';
import { limbs, parts } from '../care/consent/facts.ts';
import { packOn } from '../care/consent/pack-on.ts';
import type { DecisionAnswers } from '../care/consent/path.ts';
import { lacksIn, onlyAsked } from '../care/consent/path.ts';
import type { Home } from '../care/home.ts';
import { factsIn, standing } from '../care/home.ts';
import type { FactId, PersonId } from '../care/ids.ts';
import { policyOn } from '../care/policy/in-force.ts';
import type { Refusal } from '../care/refusal.ts';
import { allow, refuse } from '../care/refusal.ts';
import { ranks } from '../care/staff/rights.ts';
import type { Day } from '../care/time.ts';
import { addDays } from '../care/time.ts';
import { standingFor } from './describe.ts';
import type { Doing, Outcome } from './doing.ts';
import { today } from './doing.ts';
import { wrongDay } from './wrong-entry.ts';

export interface GivenDecision {
  readonly person: PersonId;
  readonly test: string;
  readonly answers: DecisionAnswers;
  readonly from: Day;
  readonly review: Day;
  readonly until: Day;
}

/**
 * A decision about one kind of test for one person. Everything its rule pack demands on the path taken
 * must be there; the program concludes nothing, and there is no way to record one for several people.
 */
export function recordDecision(home: Home, given: GivenDecision, doing: Doing): Outcome {
  if (!ranks(home, doing.by, 'senior')) return refuse({ reason: 'needs-senior' });
  const on = today(home, doing);
  const pack = packOn(home, on);
  if (pack === undefined) return refuse({ reason: 'no-rule-pack' });
  const answers = onlyAsked(pack, given.answers);
  const [lack] = lacksIn(pack, answers);
  if (lack !== undefined)
    return refuse({ reason: 'decision-incomplete', at: lack.at, why: lack.why });
  const wrong = wrongDays(home, given, on) ?? tooLong(answers);
  if (wrong !== undefined) return refuse(wrong);
  if (answers.start === '' || answers.authority === '')
    return refuse({ reason: 'decision-incomplete', at: 'start', why: 'unanswered' });
  const written = parts.filter((part) => answers.texts[part].trim() !== '');
  const { person, test, from, until, review } = given;
  const old = standingFor(home, ['person', person], {
    kind: 'consent.decided',
    where: (fact) => fact.data.test === test,
  });
  return allow([
    {
      kind: 'consent.decided',
      data: {
        ...{ person, test, authority: answers.authority, from, until },
        record: {
          ...{ pack: pack.pack, packVersion: pack.version, start: answers.start, review },
          ...(answers.conclusion !== '' && { conclusion: answers.conclusion }),
          told: [...answers.told],
          limbs: limbs.flatMap((limb) => {
            const answer = answers.limbs[limb];
            return answer === '' ? [] : [{ limb, can: answer === 'can' }];
          }),
          ...(answers.document !== '' && { document: answers.document }),
          parts: written,
        },
        ...old,
      },
      private: {
        reason: answers.texts.matter.trim().normalize('NFC'),
        parts: written.map((part) => ({ part, text: answers.texts[part].trim().normalize('NFC') })),
      },
    },
  ]);
}

function wrongDays(
  home: Home,
  { from, review, until }: GivenDecision,
  on: Day,
): Refusal | undefined {
  const wrong =
    wrongDay(from, { field: 'from' }) ??
    wrongDay(review, { field: 'review' }) ??
    wrongDay(until, { field: 'until' });
  if (wrong !== undefined) return wrong;
  if (until < from) return { reason: 'ends-before-start', field: 'until' };
  if (review < from || review > until) return { reason: 'review-outside', field: 'review' };
  const rules = policyOn(home, on).policy.decisions;
  const within = rules?.reviewWithinDays?.value;
  if (within !== undefined && review > addDays(from, within))
    return { reason: 'review-too-late', field: 'review', days: within };
  const most = rules?.longestDays.value;
  return most !== undefined && until > addDays(from, most)
    ? { reason: 'decision-too-long', field: 'until', days: most }
    : undefined;
}

function tooLong({ texts }: DecisionAnswers): Refusal | undefined {
  const long = (Object.keys(texts) as Part[]).find((part) => texts[part].length > 4000);
  return long && { reason: 'too-long', field: long, most: 4000 };
}

/** Opening the whole record: seniors and managers, and each look is kept. */
export function lookAtDecision(
  home: Home,
  { person, decision }: { readonly person: PersonId; readonly decision: FactId },
  doing: Doing,
): Outcome {
  if (!ranks(home, doing.by, 'senior')) return refuse({ reason: 'needs-senior' });
  const known = standing(factsIn(home, 'person', person), 'consent.decided');
  const all = known.some(({ id }) => id === decision) || home.known.get(decision) !== undefined;
  if (!all) return refuse({ reason: 'unknown-person' });
  return allow([{ kind: 'decision.looked-at', data: { person, decision } }]);
}
