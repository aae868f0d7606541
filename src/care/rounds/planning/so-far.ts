import { turnsInRound } from '../../custody/person-turns.ts';
import type { Home } from '../../home.ts';
import type { PersonId } from '../../ids.ts';
import { policyOn } from '../../policy/in-force.ts';
import type { Instant } from '../../time.ts';
import { wallTime } from '../../time.ts';
import type { Round } from '../round.ts';
import type { PlannedLane, RoundPlanMade } from './plan.ts';
import type { SoFar } from './replan.ts';

/** Minutes after midnight at a moment, in the service's zone. */
export function minuteOf(home: Home, at: Instant): number {
  const [hours, minutes] = wallTime(at, home.service.zone).split(':');
  return Number(hours) * 60 + Number(minutes);
}

/** What has happened in a round until now, as a plan made anew has to know it. */
export function soFarOf(home: Home, round: Round, now: Instant): SoFar {
  const { policy } = policyOn(home, round.planned.data.day);
  const turns = round.people
    .flatMap(({ person }) => turnsInRound(home, person, round.id))
    .filter((turn) => turn.closed !== undefined);
  const after = policy.technique.secondTryAfterMinutes.value;
  const last = (person: PersonId) => turns.findLast((turn) => turn.person === person);
  const people = [...new Set(turns.map(({ person }) => person))];
  const ends = (person: PersonId) => last(person)?.closed?.data.end;
  const tries = (person: PersonId) => turns.filter((turn) => turn.person === person).length;
  const once = (person: PersonId) => tries(person) < policy.technique.triesPerDay.value;
  const again = people.filter(
    (person) => ends(person) !== 'taken' && ends(person) !== 'declined' && once(person),
  );
  return {
    now: minuteOf(home, now),
    done: people.flatMap((person) => {
      const turn = last(person);
      if (!turn?.closed) return [];
      const { swabber, recorder } = turn.pair;
      const [start, end] = [turn.openedAt, turn.closed.at].map((at) => minuteOf(home, at));
      return [
        { person, swabber, recorder, start: start ?? 0, end: Math.max(start ?? 0, end ?? 0) },
      ];
    }),
    again: again.map((person) => ({
      person,
      notBefore:
        minuteOf(home, last(person)?.closed?.at ?? now) + (ends(person) === 'stopped' ? after : 0),
    })),
    gone: people.filter((person) => ends(person) === 'declined'),
    away: [],
  };
}

/** The plan that people know, from the round's list; what was not timed is not in it. */
export function knownPlan(home: Home, round: Round): RoundPlanMade {
  const lanes = new Map<string, PlannedLane[number][]>();
  for (const { person, at, swabber, recorder } of round.people) {
    if (!at || !swabber || !recorder) continue;
    const start = minuteOf(home, at);
    const key = [swabber, recorder].sort().join(' ');
    const lane = lanes.get(key) ?? [];
    lane.push({ person, swabber, recorder, start, end: start });
    lanes.set(key, lane);
  }
  const parts = { leftOut: 0, prices: 0, steps: 0, promises: 0, finish: 0, imbalance: 0 };
  return { lanes: [...lanes.values()], leftOut: [], cost: 0, parts, finish: 0 };
}
