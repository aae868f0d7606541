import type { Verdict } from '../../../care/quality/facts.ts';
import type { Finding, FindingKind } from '../../../care/quality/finding.ts';
import { ABOUT_RESULTS } from '../../../care/quality/rulings.ts';
import type { Account } from '../../../care/quality/verdicts.ts';
import { accountsOf, verdictsFor } from '../../../care/quality/verdicts.ts';
import { useDesk } from '../../desk/desk.ts';
import { namesIn } from '../../desk/names.ts';
import { tellFact } from '../../desk/tell/tell-fact.ts';
import type { ChoiceOption } from '../../pieces/form/choice.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { useSigned } from '../test/use-signed.ts';
import { inTime } from './side-part.tsx';

/** About what somebody wrote elsewhere: no tube is taken out, it is registered again. */
const ABOUT_REFERENCES: ReadonlySet<FindingKind> = new Set([
  'registered-twice',
  'reference-on-two',
]);
/** One side standing takes the other tests out. */
const BETWEEN_TESTS: ReadonlySet<FindingKind> = new Set(['code-on-two', 'two-tests']);

/** Everything that may be said of a finding, as one list: a value is `verdict` or `verdict factId`. */
export function useVerdictOptions(found: Finding): ChoiceOption<string>[] {
  const { home } = useDesk();
  const words = useAllWords();
  const signed = useSigned();
  const say = words.findings;
  const names = namesIn(home, words.refusals.somebody);

  const told = ({ facts }: Account): string =>
    facts
      .toSorted(inTime)
      .slice(0, 1)
      .map((fact) => `${tellFact(fact, { home, words })} ${signed(fact)}`)
      .join(' ');
  const stands = (account: Account): ChoiceOption<string> => ({
    value: `one-stands ${account.keeps}`,
    label:
      account.test === undefined
        ? say.thisStands(told(account))
        : say.oneStands(names.test(account.test), told(account)),
    ...(BETWEEN_TESTS.has(found.kind) && { hint: say.othersGo }),
  });
  const options = (verdict: Verdict): ChoiceOption<string>[] => {
    switch (verdict) {
      case 'one-stands':
        return accountsOf(home, found).map(stands);
      case 'none-stands':
        if (ABOUT_REFERENCES.has(found.kind))
          return [{ value: verdict, label: say.noReference, hint: say.noReferenceHow }];
        return ABOUT_RESULTS.has(found.kind)
          ? [{ value: verdict, label: say.noneStand, hint: say.noResultHow }]
          : [{ value: verdict, label: say.noneStand, hint: say.noneStandHow }];
      case 'explained':
        return [{ value: verdict, label: say.explained, hint: say.explainedHow }];
    }
  };
  return verdictsFor(found.kind).flatMap(options);
}
