import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demoPolicy, Trial } from '../../test/trial/home.ts';
import { kitCode, plan, startTurn, touch, turnTo } from '../../test/trial/round.ts';
import { consentOn } from '../care/consent/decision.ts';
import { parts, told } from '../care/consent/facts.ts';
import type { DecisionAnswers } from '../care/consent/path.ts';
import { turnOf } from '../care/custody/turn.ts';
import { factsIn, ofKind } from '../care/home.ts';
import type { PersonId, RoundId, StaffId } from '../care/ids.ts';
import { practiceOf } from '../care/practice/practice.ts';
import { wireOf } from '../care/rounds/frame.ts';
import { readinessOf } from '../care/rounds/readiness.ts';
import { roundOf } from '../care/rounds/round.ts';
import type { Day } from '../care/time.ts';
import { addDays, dayOf, momentOf } from '../care/time.ts';
import { askPractice, recordSession } from './practise.ts';
import { lookAtDecision, recordDecision } from './record-decision.ts';

const TODAY = '2026-03-03' as Day;
const texts = Object.fromEntries(
  parts.map((part) => [part, `About ${part}.`]),
) as DecisionAnswers['texts'];
const own: DecisionAnswers = {
  ...{ start: 'presumed', conclusion: '', authority: 'asks-each-time' },
  ...{ told: [...told], document: '', texts },
  limbs: { understand: '', retain: '', weigh: '', communicate: '' },
};
const lacks: DecisionAnswers = {
  ...own,
  ...{ start: 'in-doubt', conclusion: 'lacks-capacity', authority: 'best-interests' },
  limbs: { understand: 'cannot', retain: 'can', weigh: 'cannot', communicate: 'can' },
};
const days = { from: TODAY, review: addDays(TODAY, 60), until: addDays(TODAY, 90) };

interface Scene {
  readonly trial: Trial;
  readonly person: PersonId;
}
function scene(policy = demoPolicy(), zone = 'Europe/London'): Scene {
  const trial = new Trial({ policy, zone });
  for (const name of ['Pia', 'Jonah']) trial.staff(name);
  trial.device = 'S0000001';
  trial.add('staff.role', { staff: 'jonah' as StaffId, role: 'senior' });
  trial.device = 'T0000001';
  const person = trial.person('Corwen Vale', '1951-03-14');
  trial.person('Tamsin Oake', '1962-11-20');
  return { trial, person };
}
const decide = ({ trial, person }: Scene, answers: DecisionAnswers, when = days) =>
  recordDecision(trial.home, { person, test: 'respiratory', answers, ...when }, trial.doing);
const holds = ({ trial, person }: Scene, on: Day = TODAY): string[] =>
  readinessOf(trial.home, person, { test: 'respiratory', on }).holds.map(({ reason }) => reason);
const start = ({ trial, person }: Scene, round: RoundId, more = {}) =>
  touch(trial, {
    ...{ do: 'start', round, person, swabber: 'pia' as StaffId, recorder: 'jonah' as StaffId },
    ...more,
  });

describe('a person with capacity', () => {
  it('is asked each time, and nobody examines them', () => {
    const made = scene();
    const [fact] = made.trial.must(decide(made, own));
    if (fact?.kind !== 'consent.decided') throw new Error('no decision');
    expect(fact.data.record?.parts).toEqual(['matter', 'information', 'stop-rules']);
    expect(fact.data.record?.limbs).toEqual([]);
    expect(fact.data.record).not.toHaveProperty('conclusion');
    expect(holds(made)).toEqual([]);
  });

  it('says no, and that is final for this try: no kit is used, counted as said no', () => {
    const made = scene();
    const { trial, person } = made;
    trial.must(decide(made, own));
    const round = plan(trial, [person]);
    const turn = startTurn(trial, round, person);
    trial.must(touch(trial, { do: 'identify', chosen: person, turn }));
    trial.must(touch(trial, { do: 'willing', answer: 'no', turn }));
    expect(turnOf(trial.home, turn)?.tests).toEqual([]);
    expect(wireOf(trial.home, roundOf(trial.home, round)!, person).so).toBe('declined');
    expect(trial.wait(120).refused(start(made, round)).reason).toBe('said-no');
  });

  it.each(['asleep', 'away', 'unsure'] as const)('%s is not counted as a no', (answer) => {
    const made = scene();
    const { trial, person } = made;
    const round = plan(trial, [person]);
    const turn = startTurn(trial, round, person);
    trial.must(touch(trial, { do: 'identify', chosen: person, turn }));
    trial.must(touch(trial, { do: 'willing', answer, turn }));
    const { so } = wireOf(trial.home, roundOf(trial.home, round)!, person);
    expect(so).toBe(answer === 'unsure' ? 'not-now' : answer);
  });
});

describe('a person without capacity for this decision', () => {
  it('by best interests: a whole record, then still only with their yes', () => {
    const made = scene();
    const { trial, person } = made;
    trial.must(decide(made, lacks));
    expect(holds(made)).toEqual([]);
    const round = plan(trial, [person]);
    const turn = startTurn(trial, round, person);
    turnTo(trial, turn, person, { code: kitCode(1) });
    expect(wireOf(trial.home, roundOf(trial.home, round)!, person).so).toBe('taken');
  });

  it.each(['doubt', 'aids', 'cause', 'regain', 'wishes', 'consulted', 'options'] as const)(
    'nothing is kept without: %s',
    (part) => {
      const made = scene();
      const without = { ...lacks, texts: { ...texts, [part]: '  ' } };
      expect(made.trial.refused(decide(made, without))).toMatchObject({
        ...{ reason: 'decision-incomplete', at: part },
      });
    },
  );

  it('by an attorney: a paper that nobody saw is told, and held where policy says so', () => {
    const unseen = { ...lacks, authority: 'attorney', document: 'not-seen' } as const;
    const strict = scene();
    strict.trial.must(decide(strict, unseen));
    expect(holds(strict)).toEqual(['document-not-seen']);
    const lenient = scene(
      demoPolicy(({ decisions }) => {
        if (decisions !== undefined) decisions.holdUntilDocumentSeen.value = false;
      }),
    );
    lenient.trial.must(decide(lenient, unseen));
    expect(holds(lenient)).toEqual([]);
    const { reminders } = readinessOf(lenient.trial.home, lenient.person, {
      ...{ test: 'respiratory', on: TODAY },
    });
    expect(reminders).toContainEqual({ remind: 'document-not-seen' });
    strict.trial.must(decide(strict, { ...unseen, document: 'seen' }));
    expect(holds(strict)).toEqual([]);
  });

  it('nobody may decide: held, whatever else was agreed', () => {
    const made = scene();
    made.trial.must(decide(made, { ...lacks, authority: 'nobody' }));
    expect(holds(made)).toEqual(['consent-nobody']);
  });
});

describe('a record', () => {
  it.each([
    ['worker', false],
    ['senior', true],
    ['manager', true],
  ] as const)('opened by a %s: %s, and only a look that was let in is a fact', (role, may) => {
    const made = scene();
    const { trial, person } = made;
    const [decision] = trial.must(decide(made, own));
    trial.by = trial.staff('Sorrel', role);
    const look = lookAtDecision(trial.home, { person, decision: decision!.id }, trial.doing);
    expect(look.ok).toBe(may);
    if (may) trial.must(look);
    const looks = ofKind(factsIn(trial.home, 'person', person), 'decision.looked-at');
    expect(looks.map(({ by, data }) => [by, data.decision])).toEqual(
      may ? [['sorrel', decision!.id]] : [],
    );
  });

  it('is a senior’s to write and to open, and every look is kept', () => {
    const made = scene();
    const { trial, person } = made;
    const [decision] = trial.must(decide(made, own));
    trial.by = 'pia' as StaffId;
    expect(trial.refused(decide(made, own)).reason).toBe('needs-senior');
    const look = () => lookAtDecision(trial.home, { person, decision: decision!.id }, trial.doing);
    expect(trial.refused(look()).reason).toBe('needs-senior');
    trial.by = 'jonah' as StaffId;
    trial.must(look());
    trial.must(look());
    const looks = ofKind(factsIn(trial.home, 'person', person), 'decision.looked-at');
    expect(looks.map(({ by }) => by)).toEqual(['jonah', 'jonah']);
  });

  it('is about one person: there is nowhere to put a second', () => {
    const made = scene();
    const [fact] = made.trial.must(decide(made, own));
    expect(Object.values(fact!.data).filter((value) => value === made.person)).toHaveLength(1);
    expect(JSON.stringify(fact)).not.toContain('tamsin');
  });

  it('past its review holds from the next day, past its end it is over', () => {
    const made = scene();
    made.trial.must(decide(made, own));
    expect(holds(made, days.review)).toEqual([]);
    expect(holds(made, addDays(days.review, 1))).toEqual(['decision-review-due']);
    expect(holds(made, days.until)).toEqual(['decision-review-due']);
    expect(holds(made, addDays(days.until, 1))).toEqual(['consent-ended']);
  });

  it('holds no longer than policy lets one hold, and is looked at while it holds', () => {
    const made = scene();
    const long = { ...days, until: addDays(TODAY, 366) };
    expect(made.trial.refused(decide(made, own, long))).toMatchObject({
      reason: 'decision-too-long',
    });
    const late = { ...days, review: addDays(days.until, 1) };
    expect(made.trial.refused(decide(made, own, late))).toMatchObject({ reason: 'review-outside' });
  });

  it('is looked at as soon as policy asks, to the day', () => {
    const sourced = { value: 30, source: 'A test.', from: TODAY };
    const made = scene(demoPolicy(({ decisions }) => void (decisions!.reviewWithinDays = sourced)));
    const within = (review: Day) => decide(made, own, { ...days, review });
    expect(made.trial.refused(within(addDays(TODAY, 31)))).toMatchObject({
      ...{ reason: 'review-too-late', field: 'review', days: 30 },
    });
    expect(within(addDays(TODAY, 30)).ok).toBe(true);
  });

  // Zones on both sides of the date line, with and without summer time, and with odd offsets.
  const zones = [
    ...['Europe/London', 'Pacific/Kiritimati', 'Pacific/Pago_Pago', 'Asia/Kathmandu'],
    ...['America/St_Johns', 'Australia/Lord_Howe', 'Africa/Cairo'],
  ];
  it.each(zones)('ends with its last day in %s, to the moment', (zone) => {
    const made = scene(demoPolicy(), zone);
    made.trial.must(decide(made, own));
    fc.assert(
      fc.property(fc.integer({ min: -40, max: 40 }), (hours) => {
        const end = Date.parse(momentOf(addDays(days.until, 1), '00:00', zone));
        const at = new Date(end + hours * 3_600_000).toISOString() as never;
        const { state } = consentOn(made.trial.home, made.person, 'respiratory', dayOf(at, zone));
        expect(state).toBe(hours < 0 ? 'asks-each-time' : 'ended');
      }),
    );
  });
});

describe('a person whose plan asks for practice', () => {
  it('goes from the first step to a finished swab', () => {
    const made = scene();
    const { trial, person } = made;
    trial.must(askPractice(trial.home, { person, wanted: true, from: 'picture' }, trial.doing));
    const practice = () => practiceOf(trial.home, person, dayOf(trial.now, 'Europe/London'))!;
    const ends = [
      'done',
      'done',
      'distressed',
      'done',
      'done',
      'done',
      'done',
      'done',
      'done',
    ] as const;
    ends.forEach((end, i) => {
      trial.at('15:00', addDays(TODAY, i + 1));
      trial.must(recordSession(trial.home, { person, end, endedWell: true }, trial.doing));
    });
    expect(practice()).toMatchObject({ next: 7, ready: true });
    trial.at('09:00', addDays(TODAY, 12));
    const round = plan(trial, [person]);
    turnTo(trial, startTurn(trial, round, person), person, { code: kitCode(3) });
    expect(wireOf(trial.home, roundOf(trial.home, round)!, person).so).toBe('taken');
  });
});

describe('stop', () => {
  it('a stop, a pause of 30 minutes, a second try; the third is refused with the reason', () => {
    const made = scene();
    const { trial, person } = made;
    const round = plan(trial, [person]);
    const begin = (number: number) => {
      const turn = startTurn(trial, round, person);
      turnTo(trial, turn, person, { code: kitCode(number), until: 'start-site' });
      trial.must(touch(trial, { do: 'stop', turn }));
      trial.must(touch(trial, { do: 'finish', turn }));
      return turn;
    };
    begin(1);
    expect(wireOf(trial.home, roundOf(trial.home, round)!, person).so).toBe('stopped');
    expect(trial.wait(20).refused(start(made, round)).reason).toBe('too-soon');
    trial.wait(11);
    begin(2);
    expect(trial.wait(60).refused(start(made, round))).toMatchObject({
      ...{ reason: 'enough-today', person },
    });
  });
});
