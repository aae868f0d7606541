import { attackRates } from '../../../statistics/proportions/attack-rates.ts';
import { binomialTest } from '../../../statistics/proportions/binomial-test.ts';
import { blaker } from '../../../statistics/proportions/blaker.ts';
import { chiSquareTwoByTwo } from '../../../statistics/proportions/chi-square-two-by-two.ts';
import { clopperPearson } from '../../../statistics/proportions/clopper-pearson.ts';
import { fisherExact } from '../../../statistics/proportions/fisher-exact.ts';
import { funnelLimits } from '../../../statistics/proportions/funnel-limits.ts';
import type { Interval } from '../../../statistics/proportions/interval.ts';
import { jeffreys } from '../../../statistics/proportions/jeffreys.ts';
import { midP } from '../../../statistics/proportions/mid-p.ts';
import { newcombeDifference } from '../../../statistics/proportions/newcombe-difference.ts';
import { probabilityHigher } from '../../../statistics/proportions/probability-higher.ts';
import { sterne } from '../../../statistics/proportions/sterne.ts';
import type { Tally, TallyWithConfidence } from '../../../statistics/proportions/tally.ts';
import type { TwoByTwo } from '../../../statistics/proportions/two-by-two.ts';
import { wilson } from '../../../statistics/proportions/wilson.ts';
import type { Outcome } from '../../../statistics/refusal/refusal.ts';
import { answer, InUse, valueOrNull } from '../answer.ts';
import type { Adapter, Adapters } from '../check.ts';
import type { Input } from '../input.ts';
import { rFisher } from './r-fisher.ts';

const tally = (i: Input): TallyWithConfidence => ({
  events: i.number('x', 'events'),
  trials: i.number('n', 'trials'),
  confidence: i.numberOr(0.95, 'conf', 'confidence'),
});
const limits = ({ lower, upper }: Interval): readonly number[] => [lower, upper];

const interval =
  (method: (t: TallyWithConfidence) => Outcome<Interval>): Adapter =>
  (i) => {
    const t = tally(i);
    return answer(method(t), (ci) => ({
      est: t.events / t.trials,
      ci: limits(ci),
      lower: ci.lower,
      upper: ci.upper,
      published4dp: limits(ci),
    }));
  };

const METHODS = { wilson, clopperPearson, jeffreys, midP, blaker, sterne };

const intervals: Adapter = (i) =>
  Object.fromEntries(
    Object.entries(METHODS).map(([name, method]) => {
      const found = valueOrNull(method(tally(i)));
      return [name, found && limits(found)];
    }),
  );

/** As it is given: the tests of a table look at its shape themselves. */
const table = (i: Input): TwoByTwo => i.get('table') as unknown as TwoByTwo;

const TAILS = { '025': 0.025, '001': 0.001, '005': 0.005, '01': 0.01, '05': 0.05 };
const MIRROR = { '025': '975', '001': '999', '005': '995', '01': '99', '05': '95' };

const funnel: Adapter = (i) =>
  Object.fromEntries(
    Object.entries(TAILS).flatMap(([name, tail]) => {
      const found = valueOrNull(funnelLimits(i.number('target'), i.numbers('n'), tail));
      return [
        [`l${name}`, found?.lower],
        [`u${MIRROR[name as keyof typeof MIRROR]}`, found?.upper],
      ];
    }),
  );

const R_FISHER = 'R fisher.test(): uniroot() with its default tolerance, eps^0.25 = 1.2e-4';

const group = (i: Input): Tally => ({
  events: i.number('ill', 'x', 'events'),
  trials: i.number('total', 'n', 'trials'),
});

export const proportions: Adapters = {
  wilson: interval(wilson),
  clopperPearson: interval(clopperPearson),
  jeffreys: interval(jeffreys),
  midP: interval(midP),
  blaker: interval(blaker),
  sterne: interval(sterne),
  intervals,
  newcombeDifference: (i) =>
    answer(
      newcombeDifference(
        { events: i.number('x1'), trials: i.number('n1') },
        { events: i.number('x2'), trials: i.number('n2') },
        i.numberOr(0.95, 'conf'),
      ),
      (d) => ({ diff: d.difference, ci: limits(d), published4dp: limits(d) }),
    ),
  fisherExact: (i) => {
    const confidence = i.numberOr(0.95, 'conf');
    return answer(fisherExact(table(i), confidence), (f) => {
      const r = rFisher(table(i), confidence);
      return {
        p: f.p,
        pGreater: f.pGreater,
        pLess: f.pLess,
        orCMLE: new InUse(f.oddsRatio, { [R_FISHER]: r.oddsRatio }),
        orCI: [
          new InUse(f.oddsRatioLower, { [R_FISHER]: r.lower }),
          new InUse(f.oddsRatioUpper, { [R_FISHER]: r.upper }),
        ],
      };
    });
  },
  chiSquare2x2: (i) =>
    answer(
      chiSquareTwoByTwo(table(i), { correct: !i.has('correct') || i.get('correct') === true }),
      (c) => ({ x2: c.statistic, p: c.p, minExpected: c.leastExpected }),
    ),
  funnelLimits: funnel,
  probRateHigher: (i) => {
    const prior = i.has('prior') ? i.numbers('prior') : [0.5, 0.5];
    return answer(
      probabilityHigher(group(i.child('A')), group(i.child('B')), [
        prior[0] as number,
        prior[1] as number,
      ]),
      (p) => ({ p }),
    );
  },
  binomTestGreater: (i) =>
    answer(binomialTest(tally(i), i.number('p0')), (t) => ({ p: t.greater })),
  binomTestLess: (i) => answer(binomialTest(tally(i), i.number('p0')), (t) => ({ p: t.less })),
  binomTest: (i) =>
    answer(binomialTest(tally(i), i.number('p0')), (t) => ({
      p: t.twoSided,
      pGreater: t.greater,
      pLess: t.less,
    })),
  binomTestTwoSided: (i) =>
    answer(binomialTest(tally(i), i.number('p0')), (t) => ({ p: t.twoSided })),
  attackRates: (i) =>
    answer(
      attackRates(group(i.child('exposed')), group(i.child('unexposed')), i.numberOr(0.95, 'conf')),
      (a) => ({
        arExposed: a.exposed,
        arUnexposed: a.unexposed,
        rr: a.riskRatio.estimate,
        rrLower: a.riskRatio.lower,
        rrUpper: a.riskRatio.upper,
        or: a.oddsRatio.estimate,
        orLower: a.oddsRatio.lower,
        orUpper: a.oddsRatio.upper,
      }),
    ),
};
