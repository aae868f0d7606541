import { describe, expect, it } from 'vitest';
import { demoPolicy, Trial } from '../../../test/trial/home.ts';
import { askPractice, recordSession } from '../../procedures/practise.ts';
import type { PersonId } from '../ids.ts';
import type { Day } from '../time.ts';
import { dayOf } from '../time.ts';
import { practiceDueOn } from './due.ts';
import type { StepEnd } from './facts.ts';
import { forecastFor } from './forecast.ts';
import { practiceOf } from './practice.ts';

const cor = 'cor' as PersonId;
const days = (n: number) => `2026-03-${String(3 + n).padStart(2, '0')}`;

function begun(policy = demoPolicy()): Trial {
  const trial = new Trial({ policy });
  trial.add('person.described', { person: cor, about: 'name' }, { value: 'Corwen Vale' });
  trial.must(askPractice(trial.home, { person: cor, wanted: true, from: 'picture' }, trial.doing));
  return trial;
}
const session = (trial: Trial, end: StepEnd): void => {
  trial.wait(1);
  trial.must(recordSession(trial.home, { person: cor, end, endedWell: true }, trial.doing));
};
const today = (trial: Trial): Day => dayOf(trial.now, trial.home.service.zone);
const stands = (trial: Trial) => practiceOf(trial.home, cor, today(trial))!;

describe('the ladder', () => {
  it('goes up after a step done, stays after not yet, comes down one after distress', () => {
    const trial = begun();
    for (const end of ['done', 'done', 'not-yet', 'done', 'distressed'] as const)
      session(trial, end);
    expect(stands(trial).heights).toEqual([1, 2, 2, 3, 2]);
  });
  it('never goes below the first step, and is over after the last', () => {
    const trial = begun();
    session(trial, 'distressed');
    expect(stands(trial).next).toBe(0);
    for (let i = 0; i < 7; i += 1) session(trial, 'done');
    expect(stands(trial)).toMatchObject({ ready: true, next: 7 });
  });
  it('is none where the plan asks for none', () => {
    const trial = begun();
    trial.wait(1);
    trial.must(askPractice(trial.home, { person: cor, wanted: false }, trial.doing));
    expect(practiceOf(trial.home, cor, today(trial))).toBeUndefined();
  });
});

describe('what is due', () => {
  it('is one session a day, with its minutes, until the last step', () => {
    const trial = begun();
    expect(practiceDueOn(trial.home, today(trial))).toMatchObject([
      { person: cor, number: 1, of: 7, minutes: 5, step: { step: 'picture' } },
    ]);
    session(trial, 'done');
    expect(practiceDueOn(trial.home, today(trial))).toEqual([]);
    trial.at('09:00', days(1));
    expect(practiceDueOn(trial.home, today(trial))).toMatchObject([{ number: 2 }]);
  });
});

describe('the forecast', () => {
  it('says that too few sessions are known, until as many as policy wants', () => {
    const trial = begun();
    for (let i = 0; i < 5; i += 1) session(trial, 'done');
    expect(forecastFor(trial.home, stands(trial), today(trial))).toEqual({
      ...{ state: 'too-few', have: 5, need: 10 },
    });
  });
  it('tells a range that cannot be shorter than the steps left', () => {
    const trial = begun();
    for (let i = 0; i < 3; i += 1) {
      for (const end of ['done', 'not-yet', 'done', 'distressed'] as const) session(trial, end);
    }
    const told = forecastFor(trial.home, stands(trial), today(trial));
    if (told.state !== 'told') throw new Error('nothing told');
    expect(told.low).toBeGreaterThanOrEqual(7 - stands(trial).next);
    expect(told.high ?? 41).toBeGreaterThan(told.low);
    expect(told.chanceBy(today(trial))).toBe(0);
    expect(told.chanceBy('2026-05-03' as Day)).toBeGreaterThan(0.3);
  });
});
