import type { Home } from '../home.ts';
import type { PersonId, RoundId } from '../ids.ts';
import { policyOn } from '../policy/in-force.ts';
import type { Refusal } from '../refusal.ts';
import type { Instant } from '../time.ts';
import { after, dayOf, MINUTE } from '../time.ts';
import { approaches, isOpen, turnsInRound, turnsOn } from './person-turns.ts';
import { isLive, testOf } from './test.ts';
import type { Turn } from './turn.ts';

/**
 * Whether this person may be approached now, as far as earlier tries say. Two tries a day, half an
 * hour apart, unless policy says otherwise; a clear no ends it unless they come and ask.
 */
export function triesAllow(
  home: Home,
  person: PersonId,
  when: {
    readonly now: Instant;
    readonly changedMind: boolean;
    /** The turn in hand, for another kit in it: its swabs count, its own pause does not. */
    readonly within?: Turn;
  },
): Refusal | undefined {
  const today = dayOf(when.now, home.service.zone);
  const { technique } = policyOn(home, today).policy;
  const turns = turnsOn(home, person, today).filter((turn) => !isOpen(turn));
  const begun = when.within?.begun.length ?? 0;
  const tries = turns.reduce((sum, turn) => sum + approaches(turn), begun);
  if (tries >= technique.triesPerDay.value) return { reason: 'enough-today', person };
  if (when.within !== undefined) return undefined;
  const said = turns.findLast((turn) => turn.closed?.data.end === 'declined');
  if (said?.willing !== undefined && !when.changedMind) {
    return { reason: 'said-no', person, at: said.willing.at };
  }
  const from = latest(turns.flatMap((turn) => lastNo(turn) ?? []));
  const again = from && after(from, technique.secondTryAfterMinutes.value * MINUTE);
  return again !== undefined && when.now < again
    ? { reason: 'too-soon', person, from: again }
    : undefined;
}

/** How many more tries policy leaves a person today, the turn in hand counted as it stands. */
export function triesLeft(home: Home, person: PersonId, now: Instant): number {
  const today = dayOf(now, home.service.zone);
  const { triesPerDay } = policyOn(home, today).policy.technique;
  const made = turnsOn(home, person, today).reduce((sum, turn) => sum + approaches(turn), 0);
  return Math.max(0, triesPerDay.value - made);
}

/** When this person last stopped or did not say yes: the pause counts from that instant. */
function lastNo(turn: Turn): Instant | undefined {
  if (turn.stop !== undefined) return turn.stop.at;
  const answer = turn.willing?.data.answer;
  return answer === 'no' || answer === 'unsure' ? turn.willing?.at : undefined;
}

const latest = (instants: readonly Instant[]): Instant | undefined => [...instants].sort().at(-1);

/** A person has one live tube a round. */
export function alreadyTested(home: Home, person: PersonId, round: RoundId): Refusal | undefined {
  for (const turn of turnsInRound(home, person, round)) {
    for (const test of turn.tests) {
      if (isLive(testOf(home, test))) return { reason: 'already-tested', person, test };
    }
  }
  return undefined;
}
