import { describe, expect, it } from 'vitest';
import { Trial } from '../../test/trial/home.ts';
import { kitCode, plan, swab } from '../../test/trial/round.ts';
import type { PersonId, StaffId } from '../care/ids.ts';
import { againstWishes, helperWishes, somebodyAsks } from '../care/people/helpers.ts';
import { standingOf } from '../care/quality/finding.ts';
import { findings } from '../care/quality/findings.ts';
import { memberOf } from '../care/staff/member.ts';
import type { HelpersSaid } from './helpers.ts';
import { setHelpers, setWorksAs } from './helpers.ts';

function house() {
  const trial = new Trial();
  const [pia, jonah] = [trial.staff('Pia'), trial.staff('Jonah')];
  const joss = trial.staff('Joss', 'senior');
  const hesper = trial.person('Hesper Lund', '1939-09-09');
  trial.by = pia;
  const say = (more: Partial<HelpersSaid>) =>
    setHelpers(
      trial.home,
      { person: hesper, wanted: [], unwanted: [], told: 'person', reason: '', ...more },
      trial.doing,
    );
  return { trial, pia, jonah, joss, hesper, say };
}
const kinds = (trial: Trial) => findings(trial.home).map(({ kind }) => kind);

describe('whom a person wants', () => {
  it('is written down by anybody who hears it, amended, and nothing is written twice', () => {
    const { trial, pia, jonah, hesper, say } = house();
    expect(trial.must(say({}))).toEqual([]);
    const told = {
      wanted: [pia],
      unwanted: [jonah],
      swabber: 'woman',
      reason: ' "Not him." ',
    } as const;
    expect(trial.must(say(told))).toHaveLength(1);
    expect(trial.must(say(told))).toEqual([]);
    const wishes = { wanted: [pia], unwanted: [jonah], swabber: 'woman', told: 'person' };
    expect(helperWishes(trial.home, hesper)).toEqual({ ...wishes, reason: '"Not him."' });
    const [more] = trial.must(say({ ...told, told: 'family' }));
    expect(more?.data).toHaveProperty('replaces');
    expect(helperWishes(trial.home, hesper).told).toBe('family');
    expect(kinds(trial)).toEqual([]);
  });

  it('cannot be a colleague who is not wanted, nor a reason longer than a page takes', () => {
    const { trial, pia, say } = house();
    const both = { reason: 'wanted-and-not', staff: pia };
    expect(trial.refused(say({ wanted: [pia], unwanted: [pia] }))).toMatchObject(both);
    const long = { reason: 'too-long', field: 'reason' };
    expect(trial.refused(say({ wanted: [pia], reason: 'x'.repeat(501) }))).toMatchObject(long);
  });

  it.each([
    ['an exclusion', { unwanted: ['jonah' as StaffId] }],
    ['a wish for a woman', { swabber: 'woman' as const }],
  ])('%s is taken back by a senior alone', (_, wish) => {
    const { trial, joss, say } = house();
    trial.must(say(wish));
    expect(trial.refused(say({})).reason).toBe('needs-senior');
    expect(trial.refused(say({ ...wish, unwanted: [], swabber: 'man' })).reason).toBe(
      'needs-senior',
    );
    // Adding to it is anybody's.
    trial.must(say({ ...wish, unwanted: ['jonah' as StaffId, joss] }));
    trial.by = joss;
    trial.must(say({ ...wish, unwanted: ['jonah' as StaffId, joss], told: 'family' }));
    trial.by = trial.staff('Maren', 'manager');
    expect(trial.must(say({}))).toHaveLength(1);
    expect(kinds(trial)).toEqual([]);
  });

  it('an exclusion is never taken back by the colleague it is about', () => {
    const { trial, joss, say } = house();
    trial.must(say({ unwanted: [joss] }));
    trial.by = joss;
    expect(trial.refused(say({})).reason).toBe('not-theirs-to-say');
  });

  it('taken back on a tablet by somebody who may not waits for a senior', () => {
    const { trial, jonah, hesper, say } = house();
    const [before] = trial.must(say({ unwanted: [jonah] }));
    const data = { person: hesper, wanted: [], unwanted: [], told: 'staff' as const };
    trial.add('person.helpers', { ...data, replaces: [before!.id] }, { reason: '' });
    expect(kinds(trial)).toEqual(['without-right']);
  });

  it('of two entries that knew nothing of each other, every exclusion counts', () => {
    const { trial, pia, jonah, hesper, say } = house();
    trial.must(say({ unwanted: [jonah], swabber: 'woman' }));
    trial.device = 'T0000002';
    const data = { person: hesper, wanted: [jonah, pia], unwanted: [], told: 'staff' as const };
    trial.add('person.helpers', data, { reason: '' });
    const wishes = { unwanted: [jonah], wanted: [pia], swabber: 'woman' };
    expect(helperWishes(trial.home, hesper)).toMatchObject(wishes);
    expect(kinds(trial)).toEqual(['edited-twice']);
  });
});

describe('what a colleague works as', () => {
  it('is theirs alone to say, to change and to keep back', () => {
    const { trial, pia, joss } = house();
    const say = (as: 'woman' | 'man' | 'unsaid') =>
      setWorksAs(trial.home, { staff: pia, as }, trial.doing);
    expect(trial.must(say('woman'))).toHaveLength(1);
    expect(trial.must(say('woman'))).toEqual([]);
    expect(memberOf(trial.home, pia).worksAs).toBe('woman');
    trial.by = joss;
    expect(trial.refused(say('man')).reason).toBe('not-theirs-to-say');
    // Nor does it count when it comes in from elsewhere, whatever it says it replaces.
    const [own] = trial.facts.filter(({ kind }) => kind === 'staff.works-as');
    trial.add('staff.works-as', { staff: pia, replaces: [own!.id] }, { as: 'man' });
    expect(memberOf(trial.home, pia).worksAs).toBe('woman');
    trial.by = pia;
    trial.must(say('unsaid'));
    expect(memberOf(trial.home, pia).worksAs).toBe('unsaid');
  });

  it('is not asked for while nobody asks for a woman or a man', () => {
    const { trial, say } = house();
    expect(somebodyAsks(trial.home)).toBe(false);
    trial.must(say({ swabber: 'man' }));
    expect(somebodyAsks(trial.home)).toBe(true);
  });
});

describe('a pair', () => {
  const against = (trial: Trial, person: PersonId, swabber: StaffId, recorder: StaffId) =>
    againstWishes(trial.home, person, { swabber, recorder });

  it('goes against an exclusion, a wish for a woman, a preference: each is told', () => {
    const { trial, pia, jonah, joss, hesper, say } = house();
    expect(against(trial, hesper, jonah, pia)).toEqual([]);
    trial.must(say({ unwanted: [jonah], swabber: 'woman', wanted: [joss] }));
    expect(against(trial, hesper, pia, jonah)).toEqual([
      { against: 'unwanted', person: hesper, staff: jonah },
      { against: 'swabber', person: hesper, staff: pia, wish: 'woman' },
      { against: 'wanted', person: hesper, wanted: [joss] },
    ]);
    trial.must(setWorksAs(trial.home, { staff: pia, as: 'woman' }, trial.doing));
    expect(against(trial, hesper, pia, joss)).toEqual([]);
  });

  it('that went against an exclusion is a finding that holds nothing, by what was known then', () => {
    const { trial, jonah, hesper, say } = house();
    swab(trial, plan(trial, [hesper]), hesper, kitCode(3));
    trial.wait(5);
    trial.by = 'pia' as StaffId;
    const [wish] = trial.must(say({ unwanted: [jonah] }));
    expect(kinds(trial)).toEqual([]);
    trial.at('09:00', '2026-03-10');
    swab(trial, plan(trial, [hesper]), hesper, kitCode(4));
    const [found, ...others] = findings(trial.home);
    expect(others).toEqual([]);
    expect(found).toMatchObject({ kind: 'against-wish', tests: [], rounds: [] });
    expect(found?.members).toContain(wish?.id);
    expect(standingOf(trial.home, found!).state).toBe('open');
  });
});
