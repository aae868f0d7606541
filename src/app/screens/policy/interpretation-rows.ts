import type { Policy } from '../../../care/policy/policy.ts';
import type { AllWords } from '../../words/en-all.ts';
import type { PolicyRow } from './policy-row.ts';
import { row } from './policy-row.ts';

/** The figures by which a result is explained, in words. Shares are in ten thousandths. */
export function interpretationRows({ interpretation }: Policy, words: AllWords): PolicyRow[] {
  if (interpretation === undefined) return [];
  const { policy: say } = words.meaning;
  const share = (value: number) => say.share(value / 100);
  const { treatmentHours } = interpretation;
  const saying = <Value>(put: (value: Value) => string) => ({ words, say: put });
  return [
    row(
      ['sensitivity', say.sensitivity],
      interpretation.sensitivity,
      saying(({ right, wrong }) => say.of(right, right + wrong)),
    ),
    row(
      ['specificity', say.specificity],
      interpretation.specificity,
      saying(({ right, wrong }) => say.of(right, right + wrong)),
    ),
    row(
      ['site-yield', say.siteYield],
      interpretation.siteYield,
      saying(({ throatAndNose, nose, throat }) =>
        say.sites(share(throatAndNose), share(nose), share(throat)),
      ),
    ),
    row(['short-swab', say.shortSwab], interpretation.shortSwab, saying(share)),
    row(
      ['long-way', say.longWay],
      interpretation.longWay,
      saying((way) => say.way(way.hours, share(way.share))),
    ),
    row(['repeat', say.repeat], interpretation.repeatCorrelation, saying(share)),
    row(
      ['before', say.beforeTest],
      interpretation.before,
      saying((before) =>
        say.befores(
          [before.background, before.contact, before.symptoms].map(share),
          [before.backgroundWithCases, before.contactWithCases, before.symptomsWithCases].map(
            share,
          ),
        ),
      ),
    ),
    row(
      ['waits', say.waits],
      interpretation.waits,
      saying(({ enough, hours }) => say.waited(enough, hours)),
    ),
    row(['wanted', say.wantedCertainty], interpretation.wantedCertainty, saying(share)),
    ...(treatmentHours === undefined
      ? []
      : [row(['treatment', say.treatment], treatmentHours, { words, say: words.policy.hours })]),
  ];
}
