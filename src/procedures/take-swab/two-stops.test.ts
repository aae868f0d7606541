import { describe, expect, it } from 'vitest';
import { house } from '../../../test/trial/house.ts';
import { kitCode, startTurn, touch, turnTo } from '../../../test/trial/round.ts';
import { meet, secondTablet } from '../../../test/trial/tablets.ts';
import { stepOf, testInHand } from '../../care/custody/step.ts';
import { testOf } from '../../care/custody/test.ts';
import { turnOf } from '../../care/custody/turn.ts';
import type { StaffId, TurnId } from '../../care/ids.ts';
import { findings } from '../../care/quality/findings.ts';
import type { Touch } from './touch.ts';

/** The recorder's tablet in a turn that is ready, and the pictures on another. */
function twoTablets(until: Touch['do'] = 'start-site') {
  const { trial, people, round } = house();
  const person = people[0]!;
  const turn = startTurn(trial, round, person);
  const test = turnTo(trial, turn, person, { code: kitCode(1), until });
  return { trial, turn, test, pictures: secondTablet(trial) };
}
type Tablets = ReturnType<typeof twoTablets>;

const step = ({ home }: Tablets['trial'], id: TurnId) => {
  const turn = turnOf(home, id)!;
  return stepOf(turn, testInHand(home, turn));
};

const swabOn = ({ trial, turn }: Tablets) => {
  const rest = [
    ...[{ do: 'next-site', ms: 10_200 }, { do: 'out', ms: 12_000 }, { do: 'lid-dry' }],
    ...[{ do: 'sealed' }, { do: 'finish' }],
  ] as const;
  for (const each of rest) trial.must(touch(trial, { ...each, turn }));
};

describe('the person stops on their pictures, the recorder has pressed Stop by mistake', () => {
  it('and takes it back before hearing of it: when they meet it is stopped', () => {
    const { trial, turn, pictures } = twoTablets();
    trial.must(touch(trial, { do: 'stop', turn }));
    pictures.wait(1);
    trial.wait(2);
    pictures.must(touch(pictures, { do: 'stop', turn }));
    trial.must(touch(trial, { do: 'stop-mistaken', turn }));
    meet(trial, pictures);
    for (const tablet of [trial, pictures]) expect(step(tablet, turn)).toBe('stopped');
    trial.must(touch(trial, { do: 'finish', turn }));
    expect(turnOf(trial.home, turn)?.closed?.data.end).toBe('stopped');
  });

  it('and it has reached the pictures: theirs is kept too, and still stands when the first is taken back', () => {
    const { trial, turn, pictures } = twoTablets();
    trial.must(touch(trial, { do: 'stop', turn }));
    meet(trial, pictures);
    pictures.must(touch(pictures, { do: 'stop', turn }));
    meet(trial, pictures);
    trial.must(touch(trial, { do: 'stop-mistaken', turn }));
    expect(step(trial, turn)).toBe('stopped');
    expect(turnOf(trial.home, turn)?.stops).toMatchObject([{ device: pictures.device }]);
  });

  it('and nobody else can call theirs a mistake: not on another tablet, not by another hand', () => {
    const { trial, turn, pictures } = twoTablets();
    pictures.must(touch(pictures, { do: 'stop', turn }));
    meet(trial, pictures);
    expect(trial.refused(touch(trial, { do: 'stop-mistaken', turn })).reason).toBe('not-this-step');
    trial.must(touch(trial, { do: 'stop', turn }));
    trial.by = 'pia' as StaffId;
    trial.must(touch(trial, { do: 'stop', turn }));
    trial.must(touch(trial, { do: 'stop-mistaken', turn }));
    expect(turnOf(trial.home, turn)?.stops.map(({ by }) => by)).toEqual(['jonah', 'jonah']);
  });

  it('pressed twice by one hand it is one stop', () => {
    const { trial, turn } = twoTablets();
    trial.must(touch(trial, { do: 'stop', turn }));
    expect(trial.must(touch(trial, { do: 'stop', turn }))).toEqual([]);
  });
});

describe('a stop while the turn is interrupted', () => {
  it('is kept, and whoever takes the turn up finds it stopped', () => {
    const { trial, turn, pictures } = twoTablets();
    trial.must(touch(trial, { do: 'interrupt', why: 'called-away', turn }));
    meet(trial, pictures);
    pictures.must(touch(pictures, { do: 'stop', turn }));
    meet(trial, pictures);
    const pair = { swabber: 'pia' as StaffId, recorder: 'jonah' as StaffId };
    trial.must(touch(trial, { do: 'resume', tube: 'kept-safe', ...pair, turn }));
    expect(step(trial, turn)).toBe('stopped');
  });
});

describe('a stop on the pictures once the swab has begun', () => {
  it('closes the kit there; the swab that went on all the same is found', () => {
    const tablets = twoTablets('next-site');
    const { trial, turn, test, pictures } = tablets;
    pictures.must(touch(pictures, { do: 'stop', turn }));
    swabOn(tablets);
    meet(trial, pictures);
    expect(testOf(trial.home, test)).toMatchObject({ stage: 'spoiled' });
    const [stop] = turnOf(trial.home, turn)!.stops;
    expect(findings(trial.home)).toMatchObject([{ kind: 'swabbed-after-no', tests: [test] }]);
    expect(findings(trial.home)[0]?.members).toContain(stop?.id);
  });

  it('is no wrong where the tube leaked first and the stop was for the next kit', () => {
    const { trial, turn, pictures } = twoTablets('sealed');
    trial.must(touch(trial, { do: 'kit-fault', why: 'leak', turn }));
    meet(trial, pictures);
    pictures.wait(5);
    pictures.must(touch(pictures, { do: 'stop', turn }));
    meet(trial, pictures);
    expect(findings(trial.home)).toEqual([]);
  });

  it('nor where they said no to a second swab after the first one leaked', () => {
    const { trial, people, round } = house();
    const [person] = people;
    const turn = startTurn(trial, round, person!);
    turnTo(trial, turn, person!, { code: kitCode(1), until: 'sealed' });
    trial.must(touch(trial, { do: 'kit-fault', why: 'leak', turn }));
    trial.must(touch(trial, { do: 'willing', answer: 'no', turn }));
    trial.wait(60);
    const pictures = secondTablet(trial);
    const again = startTurn(pictures, round, person!, { changedMind: true });
    pictures.must(touch(pictures, { do: 'identify', chosen: person!, turn: again }));
    pictures.must(touch(pictures, { do: 'willing', answer: 'no', turn: again }));
    meet(trial, pictures);
    expect(findings(trial.home)).toEqual([]);
  });
});
