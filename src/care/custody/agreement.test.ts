import { expect, it } from 'vitest';
import { Trial } from '../../../test/trial/home.ts';
import { kitCode, pack, plan, startTurn, swab, touch, turnTo } from '../../../test/trial/round.ts';
import { findings } from '../quality/findings.ts';
import { heldBy } from '../quality/held.ts';
import { agreementOf } from './agreement.ts';

function home() {
  const trial = new Trial();
  for (const name of ['Pia', 'Jonah']) trial.staff(name);
  const corwen = trial.person('Corwen Vale', '1951-03-03');
  const oriel = trial.person('Oriel Thorn', '1949-07-07');
  return { trial, corwen, oriel, round: plan(trial, [corwen, oriel]) };
}

it('tube, bag and record agree, each with how it was read and by whom', () => {
  const { trial, corwen, round } = home();
  const test = swab(trial, round, corwen, kitCode(1));
  trial.must(pack(trial, round, kitCode(1)));
  const { readings, agrees } = agreementOf(trial.home, test);
  expect(agrees).toBe('yes');
  expect(readings.map(({ place, how, by }) => [place, how, by])).toEqual(
    ['record', 'tube', 'bag', 'box'].map((place) => [place, 'scanned', 'jonah']),
  );
});

it('does not agree yet while the bag has not been read, and not at all where one differs', () => {
  const { trial, corwen, round } = home();
  const turn = startTurn(trial, round, corwen);
  const test = turnTo(trial, turn, corwen, { code: kitCode(1), until: 'read-label' });
  expect(agreementOf(trial.home, test).agrees).toBe('not-yet');
  trial.must(touch(trial, { do: 'read-label', turn, code: kitCode(2), how: 'scanned' }));
  expect(agreementOf(trial.home, test).agrees).toBe('no');
});

it('one code on two tablets with no signal: both are held, and both sides can be read', () => {
  const [one, two] = [home(), home()];
  two.trial.device = 'T0000002';
  const code = kitCode(9);
  const first = swab(one.trial, one.round, one.corwen, code);
  const second = swab(two.trial, two.round, two.oriel, code);
  // The tablets meet: the second one's facts come to the first.
  for (const fact of two.trial.facts) one.trial.take(fact);
  const [found] = findings(one.trial.home).filter(({ kind }) => kind === 'code-on-two');
  expect(found?.tests).toEqual([first, second].toSorted());
  for (const test of [first, second]) {
    expect(heldBy(one.trial.home, test).map(({ kind }) => kind)).toContain('code-on-two');
    expect(agreementOf(one.trial.home, test).readings[0]?.code).toBe(code);
  }
});
