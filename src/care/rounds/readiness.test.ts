import { describe, expect, it } from 'vitest';
import { demoPolicy, Trial } from '../../../test/trial/home.ts';
import { plan, touch } from '../../../test/trial/round.ts';
import type { PersonId, RoundId, StaffId } from '../ids.ts';
import type { Policy } from '../policy/policy.ts';
import { flagsOf } from '../record/flags.ts';
import type { Day } from '../time.ts';
import { addDays, momentOf } from '../time.ts';
import { readinessOf } from './readiness.ts';

const TODAY = '2026-03-03' as Day;
const EARLIER = addDays(TODAY, -1);
const test = 'respiratory';

interface Scene {
  readonly trial: Trial;
  readonly person: PersonId;
}
type Case = (scene: Scene) => void;

const record = (review: Day, document?: 'seen' | 'not-seen') => ({
  ...{ pack: 'england-wales-mca-2005', packVersion: 1, start: 'in-doubt' as const, review },
  ...{ conclusion: 'lacks-capacity' as const, told: [], limbs: [], parts: [] },
  ...(document !== undefined && { document }),
});
const decide = ({ trial, person }: Scene, made: ReturnType<typeof record>): void => {
  const replaces = trial.facts
    .filter((fact) => fact.kind === 'consent.decided' && fact.data.person === person)
    .map(({ id }) => id);
  trial.add(
    'consent.decided',
    {
      ...{ person, test, authority: 'attorney', from: '2026-01-01' as Day },
      ...{ until: '2026-12-31' as Day, record: made, replaces },
    },
    { reason: 'Her son decides.' },
  );
};
const write = ({ trial, person }: Scene, value: string): void => {
  trial.add('support.described', { person, about: 'helps' }, { value });
};

const strict = demoPolicy(({ holds, decisions }) => {
  const sourced = { value: true, source: 'A test.', from: '2026-01-01' as Day };
  holds.planPastReview = sourced;
  holds.planInConflict = sourced;
  decisions!.holdPastReview = sourced;
  decisions!.holdUntilDocumentSeen = sourced;
});
const lenient = demoPolicy(({ holds, decisions }) => {
  const sourced = { value: false, source: 'A test.', from: '2026-01-01' as Day };
  holds.planPastReview = sourced;
  holds.planInConflict = sourced;
  decisions!.holdPastReview = sourced;
  decisions!.holdUntilDocumentSeen = sourced;
});

function scene(policy: Policy, happens: Case): Scene & { readonly round: RoundId } {
  const trial = new Trial({ policy });
  for (const name of ['Pia', 'Jonah']) trial.staff(name);
  const person = trial.person('Hesper Lund', '1939-09-09', { photo: 'data:image/png;base64,AAAA' });
  const round = plan(trial, [person]);
  happens({ trial, person });
  return { trial, person, round };
}
const ready = ({ trial, person }: Scene, on = TODAY) =>
  readinessOf(trial.home, person, { test, on });
const start = ({ trial, person, round }: Scene & { readonly round: RoundId }) => {
  const pair = { swabber: 'pia' as StaffId, recorder: 'jonah' as StaffId };
  return touch(trial, { do: 'start', round, person, ...pair });
};

const cases: readonly (readonly [string, Case, hold: string, reminder: string])[] = [
  [
    'a decision past its review',
    (made) => decide(made, record(EARLIER)),
    ...(['decision-review-due', 'decision-review-due'] as const),
  ],
  [
    'an attorney whose paper nobody saw',
    (made) => decide(made, record(addDays(TODAY, 30), 'not-seen')),
    ...(['document-not-seen', 'document-not-seen'] as const),
  ],
  [
    'a plan past its review',
    ({ trial, person }) => {
      write({ trial, person }, 'Hold her left hand.');
      trial.add('support.reviewed', { person, next: EARLIER });
    },
    ...(['plan-review-due', 'plan-review-due'] as const),
  ],
  [
    'a plan that two colleagues wrote differently, each without the other',
    ({ trial, person }) => {
      write({ trial, person }, 'Hold her left hand.');
      trial.device = 'T0000002';
      write({ trial, person }, 'Never touch her hand.');
      trial.device = 'T0000001';
    },
    ...(['plan-in-conflict', 'plan-clash'] as const),
  ],
];

describe.each(cases)('%s', (_, happens, hold, reminder) => {
  it('is told and held where policy says so: on their page, in Prepare, and at the turn', () => {
    const made = scene(strict, happens);
    expect(ready(made).holds.map(({ reason }) => reason)).toEqual([hold]);
    expect(ready(made).reminders.map(({ remind }) => remind)).toContain(reminder);
    const flags = flagsOf(made.trial.home, made.person, TODAY);
    expect(flags.flatMap((flag) => (flag.flag === 'holds' ? [flag.hold.reason] : []))).toEqual([
      hold,
    ]);
    expect(made.trial.refused(start(made)).reason).toBe(hold);
  });

  it('is told and holds nothing where policy says so', () => {
    const made = scene(lenient, happens);
    expect(ready(made).holds).toEqual([]);
    expect(ready(made).reminders.map(({ remind }) => remind)).toContain(reminder);
    expect(start(made).ok).toBe(true);
  });
});

describe('a face that nobody can compare', () => {
  const byFace = ({ trial, person }: Scene): void => {
    const ways = { sites: 'nose-only', identity: 'face', selfSwab: false } as const;
    trial.add('support.ways', { person, ...ways });
    trial.add('staff.knows', { staff: 'pia' as StaffId, person, knows: true });
  };

  it('without a photo nobody is swabbed, whatever policy says', () => {
    const trial = new Trial({ policy: lenient });
    for (const name of ['Pia', 'Jonah']) trial.staff(name);
    const person = trial.person('Hesper Lund', '1939-09-09');
    const round = plan(trial, [person]);
    byFace({ trial, person });
    const made = { trial, person, round };
    expect(ready(made).holds.map(({ reason }) => reason)).toEqual(['photo-missing']);
    expect(trial.refused(start(made)).reason).toBe('photo-missing');
  });

  it('a photo is told to be old on the day after policy lets it be, and not before', () => {
    const made = scene(strict, byFace);
    const { photoRenewDays } = strict.holds;
    const last = addDays(TODAY, photoRenewDays.value);
    const said = (on: Day) =>
      ready(made, on).reminders.some(({ remind }) => remind === 'photo-old');
    expect(said(last)).toBe(false);
    expect(said(addDays(last, 1))).toBe(true);
  });
});

describe('what ends, ends with its day', () => {
  it('a review that is today is not late', () => {
    const made = scene(strict, (given) => decide(given, record(TODAY)));
    expect(ready(made).holds).toEqual([]);
    made.trial.now = momentOf(addDays(TODAY, 1), '00:00', made.trial.home.service.zone);
    expect(made.trial.refused(start(made)).reason).toBe('decision-review-due');
  });
});
