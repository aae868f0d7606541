import type { NearIndex } from '../../statistics/identity/near-codes.ts';
import { nearIndex } from '../../statistics/identity/near-codes.ts';
import type { Home } from '../home.ts';
import { concludingWhole, factsIn, keysOn, standing } from '../home.ts';
import type { TestId } from '../ids.ts';
import type { Code } from '../kind.ts';
import { stockOf } from '../supplies/stock.ts';
import { codeUse } from './code.ts';
import { testOf } from './test.ts';

/** Codes that a slip could land on: kits unpacked and not used, and tests without a result. */
const liveCodes: (home: Home) => ReadonlySet<Code> = concludingWhole((home) => {
  const live = new Set<Code>();
  for (const kitKind of keysOn(home, 'lot')) {
    for (const code of stockOf(home, kitKind).lotOfCode.keys()) {
      if (codeUse(home, code).use === 'free') live.add(code);
    }
  }
  for (const id of keysOn(home, 'test')) {
    const { code, spoiled } = testOf(home, id as TestId);
    if (code !== undefined && spoiled === undefined && !hasResult(home, id, code)) live.add(code);
  }
  return live;
});

const hasResult = (home: Home, test: string, code: Code): boolean =>
  standing(factsIn(home, 'code', code), 'result.recorded').length > 0 ||
  standing(factsIn(home, 'test', test), 'result.recorded').length > 0;

const index: (home: Home) => NearIndex = concludingWhole((home) => nearIndex(liveCodes(home)));

/** Live codes that this one may be taken for. Worked out only when somebody types, or unpacks. */
export const nearCodes = (home: Home, code: Code): readonly Code[] =>
  index(home).near(code) as Code[];

/** Pairs of codes easily mistaken for each other, among a delivery and between it and what is live. */
export function nearPairs(home: Home, codes: readonly Code[]): readonly (readonly [Code, Code])[] {
  const among = nearIndex(codes);
  const pairs = new Map<string, readonly [Code, Code]>();
  for (const code of codes) {
    for (const other of [...among.near(code), ...nearCodes(home, code)] as Code[]) {
      const [first, second] = code < other ? [code, other] : [other, code];
      pairs.set(`${first} ${second}`, [first, second]);
    }
  }
  return [...pairs.values()];
}
