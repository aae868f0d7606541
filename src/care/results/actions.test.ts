import { describe, expect, it } from 'vitest';
import { Trial } from '../../../test/trial/home.ts';
import { kitCode, plan, swab } from '../../../test/trial/round.ts';
import { doAction, nameAction, recordResult } from '../../procedures/record-result.ts';
import { personWent } from '../../procedures/whereabouts.ts';
import type { StaffId } from '../ids.ts';
import type { Day } from '../time.ts';
import { after, HOUR } from '../time.ts';
import { actionsFor, isSettled } from './actions.ts';
import type { Outcome } from './facts.ts';

function positive() {
  const trial = new Trial();
  trial.staff('Pia');
  trial.staff('Jonah');
  trial.staff('Sorrel', 'senior');
  const oriel = trial.person('Oriel Finch', '1948-06-02');
  const round = plan(trial, [oriel]);
  const test = swab(trial, round, oriel, kitCode(1));
  const result = (outcome: Outcome, corrects = false) =>
    trial.must(
      recordResult(
        trial.home,
        {
          ...{ code: kitCode(1), how: 'scanned', outcome, corrects },
          ...{ reported: '2026-03-03' as Day, second: { is: 'born', value: '1948-06-02' } },
        },
        trial.doing,
      ),
    );
  const action = (kind: string) => {
    const found = actionsFor(trial.home, test).find((each) => each.kind === kind);
    if (found === undefined) throw new Error(`no ${kind}`);
    return found;
  };
  result('positive');
  return { trial, oriel, test, result, action };
}

const done = { outcome: 'done', note: '' } as const;

describe('what a result asks for', () => {
  it('given a positive, when an action is given to somebody by a time, then it is theirs until done', () => {
    const { trial, test, action } = positive();
    const due = after(trial.now, 2 * HOUR);
    const who = 'sorrel' as StaffId;
    trial.must(nameAction(trial.home, { test, action: 'isolate', who, due }, trial.doing));
    expect(action('isolate')).toMatchObject({ due, named: { data: { who } } });
    trial.must(doAction(trial.home, { test, action: 'isolate', ...done }));
    expect(isSettled(action('isolate'))).toBe(true);
  });

  it('is not given for a time that is over, nor to somebody who left', () => {
    const { trial, test } = positive();
    const give = { test, action: 'isolate', who: 'sorrel' as StaffId, due: trial.now } as const;
    expect(trial.refused(nameAction(trial.home, give, trial.doing)).reason).toBe('in-the-past');
    const due = after(trial.now, HOUR);
    const gone = { ...give, due, who: 'nobody' as StaffId };
    expect(trial.refused(nameAction(trial.home, gone, trial.doing)).reason).toBe(
      'not-working-here',
    );
  });
});

describe("too late to matter: positive, isolated, her daughter told; she dies; it was somebody else's", () => {
  function corrected() {
    const all = positive();
    const { trial, oriel, test, result } = all;
    for (const action of ['isolate', 'tell-representative', 'tell-person'] as const)
      trial.must(doAction(trial.home, { test, action, ...done }));
    trial.at('10:00', '2026-03-05');
    trial.must(
      personWent(trial.home, { person: oriel, on: '2026-03-05' as Day, to: 'died' }, trial.doing),
    );
    result('withdrawn', true);
    return all;
  }

  it('no letter goes out: nobody is asked to tell her', () => {
    expect(corrected().action('tell-person')).toMatchObject({ stopped: 'died' });
    expect(isSettled(corrected().action('tell-person'))).toBe(true);
  });

  it('every other action that was done opens again, and says that it was done before', () => {
    const { action } = corrected();
    for (const kind of ['isolate', 'tell-representative']) {
      expect(action(kind).before).toBeDefined();
      expect(isSettled(action(kind))).toBe(false);
    }
  });

  it('nobody is asked to test her again', () => {
    expect(corrected().action('test-again')).toMatchObject({ stopped: 'died', before: undefined });
  });

  it('what was marked as not needed does not have to be undone', () => {
    const { trial, test, result } = positive();
    trial.must(
      doAction(trial.home, {
        test,
        action: 'find-contacts',
        outcome: 'not-needed',
        note: 'Alone.',
      }),
    );
    result('negative', true);
    const kinds = actionsFor(trial.home, test).map((each) => each.kind);
    expect(kinds).not.toContain('find-contacts');
  });
});

describe('somebody who moved on', () => {
  it('is still told, by way of the new home; isolation here is over', () => {
    const { trial, oriel, action } = positive();
    trial.must(
      personWent(trial.home, { person: oriel, on: '2026-03-03' as Day, to: 'moved' }, trial.doing),
    );
    expect(action('tell-person').stopped).toBeUndefined();
    expect(action('isolate').stopped).toBe('moved');
  });
});
