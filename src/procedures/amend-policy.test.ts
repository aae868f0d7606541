import { describe, expect, it } from 'vitest';
import { demoPolicy, Trial } from '../../test/trial/home.ts';
import type { PersonId, StaffId } from '../care/ids.ts';
import { policiesKnown, policyOn } from '../care/policy/in-force.ts';
import { practiceOf } from '../care/practice/practice.ts';
import type { Day } from '../care/time.ts';
import { addDays } from '../care/time.ts';
import { pureHash as hash } from '../ledger/hash.ts';
import type { PolicyChange } from './amend-policy.ts';
import { amendPolicy } from './amend-policy.ts';
import { askPractice, recordSession } from './practise.ts';

const TODAY = '2026-03-03' as Day;
const source = 'Speech therapist, 2 March 2026.';

function managed(): Trial {
  const trial = new Trial();
  trial.staff('Maren', 'manager');
  trial.staff('Jonah', 'senior');
  trial.by = 'maren' as StaffId;
  return trial;
}
const ladderOf = (trial: Trial, on = TODAY) => policyOn(trial.home, on).policy.practice!;
const decidingOf = (trial: Trial, on = TODAY) => policyOn(trial.home, on).policy.decisions!;
const amend = (trial: Trial, change: PolicyChange, more: { from?: Day; source?: string } = {}) =>
  amendPolicy(trial.home, { change, source, from: TODAY, hash, ...more }, trial.doing);
const asItIs = (trial: Trial) => ({
  ...{ change: 'practice' as const, steps: ladderOf(trial).steps, everyDays: 1 },
});
const rules = (trial: Trial) => {
  const { pack, longestDays, holdPastReview, holdUntilDocumentSeen } = decidingOf(trial);
  return {
    ...{ change: 'decisions' as const, pack: pack.value, longestDays: longestDays.value },
    ...{ holdPastReview: holdPastReview.value },
    holdUntilDocumentSeen: holdUntilDocumentSeen.value,
  };
};

describe('the ladder, changed by a manager', () => {
  it('is the next version: written, confirmed in their name, with source and day; the old one stays', () => {
    const trial = managed();
    const before = policyOn(trial.home, TODAY).policy;
    const [first, ...rest] = ladderOf(trial).steps;
    const steps = [...rest, { ...first!, title: 'Look at a film together' }];
    const facts = trial.must(amend(trial, { ...asItIs(trial), steps: [...steps] }));
    expect(facts.map(({ kind }) => kind)).toEqual(['policy.written', 'policy.confirmed']);
    const { policy, confirmed } = policyOn(trial.home, TODAY);
    expect(policy.version).toBe(before.version + 1);
    expect(confirmed).toMatchObject({ by: 'maren', data: { from: TODAY } });
    expect(policy.practice).toMatchObject({ steps, source });
    expect(policiesKnown(trial.home).map(({ version }) => version)).toEqual([1, 2]);
    // Everything else is word for word as it was.
    const { practice: _new, version: _v, issued: _i, ...same } = policy;
    const { practice: _old, version: _w, issued: _j, ...old } = before;
    expect(same).toEqual(old);
  });

  it('holds from the day that was said, and the past keeps its own', () => {
    const trial = managed();
    const later = addDays(TODAY, 5);
    const steps = ladderOf(trial).steps.slice(0, 3);
    trial.must(amend(trial, { ...asItIs(trial), steps }, { from: later }));
    expect(ladderOf(trial, addDays(later, -1)).steps).toHaveLength(7);
    expect(ladderOf(trial, later).steps).toHaveLength(3);
    expect(
      trial.refused(amend(trial, { ...asItIs(trial), steps }, { from: addDays(TODAY, -1) })),
    ).toMatchObject({ reason: 'in-the-past', field: 'from' });
  });

  it('gives a new step a name that none had, and a reworded one keeps its own', () => {
    const trial = managed();
    const old = ladderOf(trial).steps;
    const added = { title: 'Smell the swab', minutes: 4 };
    trial.must(amend(trial, { ...asItIs(trial), steps: [...old, added] }));
    const name = ladderOf(trial).steps.at(-1)!.step;
    expect(old.map(({ step }) => step)).not.toContain(name);
    trial.must(amend(trial, { ...asItIs(trial), steps: old }));
    trial.must(amend(trial, { ...asItIs(trial), steps: [...old, added] }));
    expect(ladderOf(trial).steps.at(-1)!.step).not.toBe(name);
    expect(policyOn(trial.home, TODAY).policy.version).toBe(4);
  });

  it('leaves somebody in the middle of it at the step after the one they did last', () => {
    const trial = managed();
    const cor = 'cor' as PersonId;
    trial.must(
      askPractice(trial.home, { person: cor, wanted: true, from: 'picture' }, trial.doing),
    );
    trial.must(
      recordSession(trial.home, { person: cor, end: 'done', endedWell: true }, trial.doing),
    );
    const [picture, hold, ...rest] = ladderOf(trial).steps;
    const warm = { title: 'Sit in the chair', minutes: 3 };
    trial.must(amend(trial, { ...asItIs(trial), steps: [warm, picture!, hold!, ...rest] }));
    const now = practiceOf(trial.home, cor, TODAY)!;
    expect(now.steps[now.next]?.step).toBe('hold');
    expect(now.steps).toHaveLength(8);
  });

  it.each([
    ['one step', { steps: [{ title: 'All at once', minutes: 5 }] }, 'steps'],
    [
      'no title',
      {
        steps: [
          { title: ' ', minutes: 5 },
          { title: 'b', minutes: 5 },
        ],
      },
      'title-0',
    ],
    [
      'no minutes',
      {
        steps: [
          { title: 'a', minutes: 5 },
          { title: 'b', minutes: 0 },
        ],
      },
      'minutes-1',
    ],
    [
      'half a minute',
      {
        steps: [
          { title: 'a', minutes: 5 },
          { title: 'b', minutes: 0.5 },
        ],
      },
      'minutes-1',
    ],
    ['no day between', { everyDays: 0 }, 'everyDays'],
  ] as const)('is refused with the field that is wrong: %s', (_, bad, field) => {
    const trial = managed();
    expect(trial.refused(amend(trial, { ...asItIs(trial), ...bad }))).toMatchObject({ field });
    expect(policiesKnown(trial.home)).toHaveLength(1);
  });

  it('wants a source, a change, and a manager', () => {
    const trial = managed();
    const change = { ...asItIs(trial), everyDays: 2 };
    expect(trial.refused(amend(trial, change, { source: ' ' }))).toMatchObject({ field: 'source' });
    expect(trial.refused(amend(trial, asItIs(trial))).reason).toBe('nothing-changed');
    trial.by = 'jonah' as StaffId;
    expect(trial.refused(amend(trial, change)).reason).toBe('needs-manager');
  });
});

describe('how decisions are recorded, changed by a manager', () => {
  it('another law, a review period and an end: what changed has the new source, the rest keeps its own', () => {
    const trial = managed();
    const before = decidingOf(trial);
    const change = { ...rules(trial), pack: 'crpd-article-12', reviewWithinDays: 90 };
    trial.must(amend(trial, { ...change, packUntil: '2026-12-31' as Day }));
    const after = decidingOf(trial);
    expect(after.pack).toEqual({
      ...{ value: 'crpd-article-12', source, from: TODAY, until: '2026-12-31' },
    });
    expect(after.reviewWithinDays).toEqual({ value: 90, source, from: TODAY });
    expect(after.longestDays).toEqual(before.longestDays);
    expect(after.packs).toEqual(before.packs);
    // The same again changes nothing, and an empty period takes it out.
    expect(trial.refused(amend(trial, { ...change, packUntil: '2026-12-31' as Day })).reason).toBe(
      'nothing-changed',
    );
    trial.must(amend(trial, rules(trial)));
    expect(decidingOf(trial).reviewWithinDays).toBeUndefined();
  });

  it('a law that the policy does not hold is refused, and an end before the beginning', () => {
    const trial = managed();
    expect(trial.refused(amend(trial, { ...rules(trial), pack: 'none' })).reason).toBe(
      'no-rule-pack',
    );
    const early = { ...rules(trial), packUntil: addDays(TODAY, -1) };
    expect(trial.refused(amend(trial, early))).toMatchObject({ field: 'packUntil' });
  });

  it('a home without a ladder or packs has nothing to change', () => {
    const bare = demoPolicy((policy) => {
      delete policy.practice;
      delete policy.decisions;
    });
    const trial = new Trial({ policy: bare });
    trial.staff('Maren', 'manager');
    trial.by = 'maren' as StaffId;
    const practice = { change: 'practice', steps: [], everyDays: 1 } as const;
    expect(trial.refused(amend(trial, practice)).reason).toBe('no-ladder');
    const decisions = { ...rules(managed()), change: 'decisions' as const };
    expect(trial.refused(amend(trial, decisions)).reason).toBe('no-rule-pack');
  });
});
