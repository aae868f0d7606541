import type { Home } from '../home.ts';
import { concludingWhole } from '../home.ts';
import type { RoundId } from '../ids.ts';
import type { Finding } from './finding.ts';
import { isOpenFinding } from './finding.ts';
import { findings } from './findings.ts';

const held = concludingWhole((home): ReadonlyMap<RoundId, readonly Finding[]> => {
  const byRound = new Map<RoundId, Finding[]>();
  for (const found of findings(home)) {
    if (found.rounds.length === 0 || !isOpenFinding(home, found)) continue;
    for (const round of found.rounds) byRound.set(round, [...(byRound.get(round) ?? []), found]);
  }
  return byRound;
});

/** Open findings that keep a round from tallying, apart from those about one of its tests. */
export const roundHeldBy = (home: Home, round: RoundId): readonly Finding[] =>
  held(home).get(round) ?? [];
