import type { TestId } from '../../../care/ids.ts';
import { policyOn, testKindOf } from '../../../care/policy/in-force.ts';
import type { TestKind } from '../../../care/policy/policy.ts';
import type { DateForm } from '../../../care/results/facts.ts';
import type { ToRegister } from '../../../care/results/registering.ts';
import { registerList } from '../../../care/results/registering.ts';
import { uploadFor } from '../../../care/results/upload.ts';
import type { Round } from '../../../care/rounds/round.ts';
import type { Desk } from '../../desk/desk.ts';

/** What the screens of registering read. */
export interface RegisterData {
  readonly round: Round;
  readonly list: readonly ToRegister[];
  readonly kind: TestKind | undefined;
  /** How the reporting body writes a day, as the service has set it; as most forms here until then. */
  readonly dates: DateForm;
}

export function registerData({ home }: Desk, round: Round): RegisterData {
  const { day, test } = round.planned.data;
  return {
    round,
    list: registerList(home, round),
    kind: testKindOf(policyOn(home, day).policy, test),
    dates: uploadFor(home, test)?.data.dates ?? 'dd/mm/yyyy',
  };
}

export const isDone = ({ registration }: ToRegister): boolean =>
  registration.registered !== undefined;
export const isOpen = (each: ToRegister): boolean => !isDone(each) && each.held.length === 0;

/** The next bag to be registered after one, round to the first; undefined when none is left. */
export function nextOpen(
  list: readonly ToRegister[],
  after: TestId | undefined,
): TestId | undefined {
  const at = list.findIndex(({ test }) => test.id === after);
  const turned = [...list.slice(at + 1), ...list.slice(0, at + 1)];
  return turned.find((each) => isOpen(each) && each.test.id !== after)?.test.id;
}
