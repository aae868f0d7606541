import windlestraw from '../../policies/windlestraw-house-1.json' with { type: 'json' };
import type { Fact } from '../../src/care/catalogue.ts';
import { testsWithCode } from '../../src/care/custody/code.ts';
import type { Home } from '../../src/care/home.ts';
import type { Code } from '../../src/care/kind.ts';
import { readPolicy } from '../../src/care/policy/policy.ts';
import { type FindingKind, standingOf } from '../../src/care/quality/finding.ts';
import { findings } from '../../src/care/quality/findings.ts';
import { heldBy } from '../../src/care/quality/held.ts';
import type { FactId } from '../../src/ledger/ids.ts';
import { homeFold, readStored } from '../../src/procedures/home-fold.ts';
import { act } from './care-acts.ts';
import { begin } from './care-begin.ts';
import { recountCare } from './care-recount.ts';
import type { Conclusion, Model } from './model.ts';

const read = readPolicy(windlestraw);
if (!read.ok) throw new Error(`${read.where}: ${read.what}`);
const fold = homeFold({ zone: 'Europe/London', policies: [read.policy] });

/** The findings that `care-recount.ts` counts again. The others have tests of their own. */
export const RECOUNTED: ReadonlySet<FindingKind> = new Set([
  'code-on-two',
  'two-results',
  'registered-twice',
  'reference-on-two',
]);

function conclude(home: Home): Conclusion {
  const found = findings(home).filter(({ kind }) => RECOUNTED.has(kind));
  const concluded = found.map((one) => {
    const standing = standingOf(home, one);
    const members = one.members as readonly string[] as readonly FactId[];
    if (standing.state !== 'settled') return { id: one.id, members };
    const { verdict, keeps } = standing.settlement.data;
    return { id: one.id, members, verdict: `${verdict} ${keeps ?? ''}` };
  });
  const tests = [...(home.shelves.get('code')?.keys() ?? [])].flatMap((code) => [
    ...testsWithCode(home, code as Code).keys(),
  ]);
  const held = [...new Set(tests)].filter((test) =>
    heldBy(home, test).some(({ kind }) => RECOUNTED.has(kind)),
  );
  return { findings: concluded, held: held.sort() };
}

/** The real domain: its catalogue, its procedures, its fold, its findings. */
export const careModel: Model<Home, Fact> = {
  fold,
  read: () => readStored,
  begin,
  burst: 15,
  ids: (home) => [...home.known.keys()] as readonly string[] as readonly FactId[],
  conclude,
  act,
  verdictIn: ({ verdict, keeps }) => `${verdict} ${keeps ?? ''}`,
  stillTells: ({ first = '[]' }, id) => {
    const kept = fold.first.decode(first).known;
    return kept.get(id as string as Fact['id'])?.private !== undefined;
  },
  recount: recountCare,
};
