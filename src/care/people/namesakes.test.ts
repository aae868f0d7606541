import { describe, expect, it } from 'vitest';
import { demoPolicy, Trial } from '../../../test/trial/home.ts';
import { plan, startTurn, touch } from '../../../test/trial/round.ts';
import { describePerson } from '../../procedures/describe.ts';
import type { StaffId } from '../ids.ts';
import { identityChoices } from './choices.ts';
import { alikeTo, personOf } from './person.ts';
import { soundOrLookAlike } from './similar-names.ts';
import { identityWay } from './way-of-knowing.ts';

const PHOTO = (n: number) => `data:image/png;base64,${String(n)}`;

describe('names that are easily mistaken', () => {
  it.each([
    ['Hallam', 'Hallum'],
    ['Vale', 'Vail'],
    ['Catherine', 'Kathryn'],
    ['Élodie', 'Elodie'],
    ['Smith', 'Smyth'],
  ])('%s and %s', (a, b) => expect(soundOrLookAlike(a, b)).toBe(true));

  it.each([
    ['Hallam', 'Harlow'],
    ['Bram', 'Lin'],
    ['Oriel', 'Tamsin'],
    ['Lee', 'Lou'],
    ['', ''],
  ])('but not %s and %s', (a, b) => expect(soundOrLookAlike(a, b)).toBe(false));
});

describe('namesakes', () => {
  it('says why: surname, what they are called, a similar name, a birthday', () => {
    const trial = new Trial();
    const orla = trial.person('Orla Vale', '1951-03-03');
    trial.person('Piers Vale', '1940-01-01');
    trial.person('Orla Thorn', '1941-01-01');
    trial.person('Zachary Vail', '1942-01-01');
    trial.person('Bram Hollow', '1951-03-03');
    trial.person('Lin Ferrow', '1944-01-01');
    const found = alikeTo(trial.home, personOf(trial.home, orla));
    expect(Object.fromEntries(found.map(({ person, why }) => [person.name, why]))).toEqual({
      'Piers Vale': ['same-surname'],
      'Orla Thorn': ['same-called'],
      'Zachary Vail': ['similar-name'],
      'Bram Hollow': ['same-birthday'],
    });
  });

  it('always stand in the blind choice, even where there are five of them', () => {
    const trial = new Trial();
    const orla = trial.person('Orla Vale', '1951-03-03');
    const near = ['Ada', 'Bea', 'Cyd', 'Dot', 'Eve'].map((name, i) =>
      trial.person(`${name} Vale`, `194${String(i)}-01-01`),
    );
    for (const name of ['Bram Hollow', 'Lin Ferrow']) trial.person(name, '1930-02-02');
    const shown = identityChoices(trial.home, orla, { way: 'birthday', turn: 't1' });
    expect(shown.map(({ id }) => id).sort()).toEqual([orla, ...near].sort());
  });

  it('who share a birthday and a name are told apart by their faces', () => {
    const trial = new Trial();
    const orla = trial.person('Orla Vale', '1951-03-03', { photo: PHOTO(1) });
    const ada = trial.person('Ada Vale', '1951-03-03', { photo: PHOTO(2) });
    const bram = trial.person('Bram Hollow', '1951-03-03', { photo: PHOTO(3) });
    expect(identityWay(trial.home, orla)).toBe('face');
    expect(identityWay(trial.home, bram)).toBe('birthday');
    const shown = identityChoices(trial.home, orla, { way: 'face', turn: 't1' });
    expect(shown.map(({ id }) => id)).toContain(ada);
  });
});

describe('somebody who cannot say their name', () => {
  function home(needed: number) {
    const policy = demoPolicy((each) => {
      const { knownByAtLeast } = each.technique;
      if (knownByAtLeast !== undefined) knownByAtLeast.value = needed;
    });
    const trial = new Trial({ policy });
    for (const name of ['Pia', 'Jonah', 'Wystan']) trial.staff(name);
    const corwen = trial.person('Corwen Vale', '1951-03-03', { photo: PHOTO(1) });
    trial.add('support.ways', {
      ...{ person: corwen, sites: 'throat-and-nose', identity: 'face', selfSwab: false },
    });
    const knows = (staff: string) =>
      trial.add('staff.knows', { staff: staff as StaffId, person: corwen, knows: true });
    knows('pia');
    const turn = () => startTurn(trial, plan(trial, [corwen]), corwen);
    return { trial, corwen, turn, knows };
  }

  it('is named by one who knows them', () => {
    const { trial, corwen, turn } = home(1);
    trial.must(touch(trial, { do: 'identify', turn: turn(), chosen: corwen }));
  });

  it('is named by two where policy says two: a third colleague may come and help', () => {
    const { trial, corwen, turn, knows } = home(2);
    knows('wystan');
    const identify = { do: 'identify', turn: turn(), chosen: corwen } as const;
    expect(trial.refused(touch(trial, identify)).reason).toBe('two-must-know');
    const wrong = touch(trial, { ...identify, also: 'stranger' as StaffId });
    expect(trial.refused(wrong).reason).toBe('two-must-know');
    const [fact] = trial.must(touch(trial, { ...identify, also: 'wystan' as StaffId }));
    expect(fact).toMatchObject({ data: { way: 'face' }, with: ['pia', 'wystan'] });
  });
});

describe("a person's number", () => {
  const edit = (trial: Trial, identifier: string) =>
    describePerson(trial.home, { fields: { name: 'Orla Vale', identifier } }, trial.doing);

  it('is told at entry when a sign is wrong or it looks like none', () => {
    const trial = new Trial();
    expect(edit(trial, '000 0790').ok).toBe(false);
    expect(trial.refused(edit(trial, '0000791')).reason).toBe('identifier-check-failed');
    expect(trial.refused(edit(trial, '12')).reason).toBe('identifier-malformed');
  });

  it('is kept as written when it is right, in groups or not, and may be empty', () => {
    const trial = new Trial();
    trial.must(edit(trial, '000079X'));
    trial.must(edit(trial, '000 079x'));
    trial.must(edit(trial, ''));
  });
});
