import type { PersonId, RoundId, StaffId, TestId, TurnId } from '../../src/care/ids.ts';
import { dueOn } from '../../src/care/rounds/due.ts';
import { dayOf, momentOf } from '../../src/care/time.ts';
import { packBag } from '../../src/procedures/pack.ts';
import { planRound } from '../../src/procedures/plan-round.ts';
import { decideTouch } from '../../src/procedures/take-swab/decide.ts';
import type { Touch } from '../../src/procedures/take-swab/touch.ts';
import type { Trial } from './home.ts';

/** A code of the demo kits, by number, with its ISO/IEC 7064 MOD 11-2 check character. */
export function kitCode(number: number): string {
  const digits = String(number).padStart(7, '0');
  const sum = Array.from(digits).reduce((p, digit) => ((p + Number(digit)) * 2) % 11, 0);
  const check = (12 - sum) % 11;
  return `KQT${digits}${check === 10 ? 'X' : String(check)}`;
}

export function plan(
  trial: Trial,
  people: readonly PersonId[],
  pair = { swabber: 'pia', recorder: 'jonah' },
): RoundId {
  const day = dayOf(trial.now, trial.home.service.zone);
  const leftOff = dueOn(trial.home, { on: day, test: 'respiratory' })
    .map((line) => line.person.id)
    .filter((person) => !people.includes(person))
    .map((person) => ({ person, why: 'another-day' as const }));
  const facts = trial.must(
    planRound(
      trial.home,
      {
        ...{
          day,
          people,
          leftOff,
          test: 'respiratory',
          kitKind: 'single-swab',
          packMinutes: 20,
        },
        swabber: pair.swabber as StaffId,
        recorder: pair.recorder as StaffId,
        courier: momentOf(day, '14:30', trial.home.service.zone),
      },
      trial.doing,
    ),
  );
  const [planned] = facts;
  if (planned?.kind !== 'round.planned') throw new Error('no round');
  return planned.data.round;
}

export const touch = (trial: Trial, given: Touch & { turn?: TurnId }) =>
  decideTouch(trial.home, given, trial.doing);

export function startTurn(
  trial: Trial,
  round: RoundId,
  person: PersonId,
  more: { changedMind?: boolean; swabber?: string; recorder?: string } = {},
): TurnId {
  const { swabber = 'pia', recorder = 'jonah', ...rest } = more;
  const [opened] = trial.must(
    touch(trial, {
      ...{ do: 'start', round, person, ...rest },
      swabber: swabber as StaffId,
      recorder: recorder as StaffId,
    }),
  );
  if (opened?.kind !== 'turn.opened') throw new Error('no turn');
  return opened.data.turn;
}

/** The straightforward way up to a step, with nothing going wrong. */
export function turnTo(
  trial: Trial,
  turn: TurnId,
  person: PersonId,
  { code, until }: { code: string; until?: Touch['do'] },
): TestId {
  const steps: Touch[] = [
    { do: 'identify', chosen: person },
    { do: 'willing', answer: 'yes' },
    { do: 'open-kit', code, how: 'scanned' },
    { do: 'contents-right' },
    { do: 'read-label', code, how: 'scanned' },
    { do: 'read-label', code, how: 'scanned' },
    { do: 'start-site' },
    { do: 'next-site', ms: 10_200 },
    { do: 'out', ms: 12_100 },
    { do: 'lid-dry' },
    { do: 'sealed' },
    { do: 'finish' },
  ];
  let test: TestId | undefined;
  for (const step of steps) {
    if (step.do === until) break;
    for (const fact of trial.must(touch(trial, { ...step, turn }))) {
      if (fact.kind === 'kit.opened') test = fact.data.test;
    }
  }
  return test as TestId;
}

export function swab(trial: Trial, round: RoundId, person: PersonId, code: string): TestId {
  return turnTo(trial, startTurn(trial, round, person), person, { code });
}

export const pack = (trial: Trial, round: RoundId, code: string) =>
  packBag(trial.home, { round, code, how: 'scanned' }, trial.doing);
