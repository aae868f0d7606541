import { describe, expect, it } from 'vitest';
import { Trial } from '../../test/trial/home.ts';
import type { FactId } from '../care/ids.ts';
import { personOf } from '../care/people/person.ts';
import { findings } from '../care/quality/findings.ts';
import { historyOf } from '../care/record/history.ts';
import { dueOn } from '../care/rounds/due.ts';
import { planOf } from '../care/support/plan.ts';
import type { Day } from '../care/time.ts';
import { raiseCaution } from './record-consent.ts';
import { strikeOut } from './strike-out.ts';
import { callOffWholeHome, noticeSymptoms, personWent, testWholeHome } from './whereabouts.ts';

const today = '2026-03-03' as Day;

function house() {
  const trial = new Trial({ on: today });
  trial.by = trial.staff('Jonah', 'senior');
  const oriel = trial.person('Oriel Finch', '1950-05-05');
  const strike = (entry: FactId, reason = 'Meant for Rowan.') =>
    strikeOut(trial.home, { person: oriel, entry, reason }, trial.doing);
  return { trial, oriel, strike };
}

const rules = (trial: Trial) =>
  dueOn(trial.home, { on: today, test: 'respiratory' }).flatMap((line) =>
    line.reasons.map(({ rule }) => rule),
  );

describe('an entry made for the wrong person', () => {
  it('no longer makes anybody due, and stays to be read', () => {
    const { trial, oriel, strike } = house();
    const seen = { person: oriel, on: today, signs: ['cough'] as const, note: '' };
    const [noted] = trial.must(noticeSymptoms(trial.home, seen, trial.doing));
    expect(rules(trial)).toContain('symptoms');
    trial.must(strike(noted!.id));
    expect(rules(trial)).not.toContain('symptoms');
    const kinds = historyOf(trial.home, 'person', oriel).map(({ fact }) => fact.kind);
    expect(kinds.slice(0, 2)).toEqual(['entry.struck-out', 'symptoms.noticed']);
  });

  it('a death set down by mistake is taken back', () => {
    const { trial, oriel, strike } = house();
    const went = { person: oriel, on: today, to: 'died' } as const;
    const [died] = trial.must(personWent(trial.home, went, trial.doing));
    expect(personOf(trial.home, oriel).whereabouts.where).toBe('left');
    trial.must(strike(died!.id));
    expect(personOf(trial.home, oriel).whereabouts.where).toBe('here');
  });

  it('is struck out once, with a reason, by a senior', () => {
    const { trial, oriel, strike } = house();
    const went = { person: oriel, on: today, to: 'leave' } as const;
    const [left] = trial.must(personWent(trial.home, went, trial.doing));
    expect(trial.refused(strike(left!.id, ' '))).toMatchObject({ reason: 'empty' });
    const jonah = trial.by;
    trial.by = trial.staff('Pia');
    expect(trial.refused(strike(left!.id))).toMatchObject({ reason: 'needs-senior' });
    trial.by = jonah;
    trial.must(strike(left!.id));
    expect(trial.refused(strike(left!.id))).toMatchObject({ reason: 'nothing-changed' });
  });
});

it('a caution is never struck out: only a clinician’s answer ends it', () => {
  const { trial, oriel, strike } = house();
  const [raised] = trial.must(
    raiseCaution({ person: oriel, caution: 'nosebleed', note: 'On Sunday.' }),
  );
  expect(trial.refused(strike(raised!.id))).toMatchObject({ reason: 'may-not-strike-out' });
  expect(planOf(trial.home, oriel).cautions).toHaveLength(1);
});

describe('the whole home asked for by mistake', () => {
  const ask = (trial: Trial) =>
    trial.must(testWholeHome(trial.home, { on: today, askedBy: 'The manager' }, trial.doing))[0]!;
  const callOff = (trial: Trial, asked: FactId, reason = 'The wrong home.') =>
    callOffWholeHome(trial.home, { asked, reason }, trial.doing);

  it('makes nobody due once it is called off, and other reasons stay', () => {
    const { trial, oriel } = house();
    trial.must(
      noticeSymptoms(
        trial.home,
        { person: oriel, on: today, signs: ['cough'], note: '' },
        trial.doing,
      ),
    );
    const [first, second] = [ask(trial), ask(trial)];
    trial.must(callOff(trial, first.id));
    expect(rules(trial)).toContain('whole-home');
    trial.must(callOff(trial, second.id));
    expect(rules(trial)).not.toContain('whole-home');
    expect(rules(trial)).toContain('symptoms');
  });

  it('is called off once, with a reason, by a senior', () => {
    const { trial, oriel } = house();
    const asked = ask(trial);
    expect(callOff(trial, asked.id, ' ')).toMatchObject({ reason: 'empty' });
    expect(callOff(trial, oriel as string as FactId)).toMatchObject({
      reason: 'nothing-changed',
    });
    const senior = trial.by;
    trial.by = trial.staff('Pia');
    expect(callOff(trial, asked.id)).toMatchObject({ reason: 'needs-senior' });
    trial.by = senior;
    trial.must(callOff(trial, asked.id));
    expect(callOff(trial, asked.id)).toMatchObject({ reason: 'nothing-changed' });
  });

  it('called off by somebody without the right is found', () => {
    const { trial } = house();
    const asked = ask(trial);
    trial.by = trial.staff('Pia');
    trial.add('home.called-off', { replaces: [asked.id] }, { reason: 'I think so.' });
    expect(findings(trial.home).map(({ kind }) => kind)).toContain('without-right');
  });
});
