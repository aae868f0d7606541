import type { PersonId, StaffId } from '../../../../care/ids.ts';
import type { UnitsApart } from '../../../../care/policy/policy.ts';
import type { TypedSpan } from '../../../pieces/form/span-rows.tsx';

export interface ShiftDraft {
  readonly on: boolean;
  /** Wall times, HH:mm; empty where nothing was said. */
  readonly from: string;
  readonly until: string;
  /** Breaks and other duties; undefined while the usual ones stand. */
  readonly away?: readonly TypedSpan[];
}

/** What somebody told the planner about this one day; what is usual is in the ledger. */
export interface PlanningDraft {
  readonly begins: string;
  readonly pairs: number;
  readonly mayChange: boolean;
  /** When a courier comes besides the round's own time. */
  readonly couriers: readonly string[];
  /** Undefined while the policy's mealtimes stand. */
  readonly meals: readonly TypedSpan[] | undefined;
  /** Pairs (`one other`) that may work together today though they usually do not. */
  readonly together: readonly string[];
  /** Wishes given up for the day by whoever has them, by their `wishKey`; a draft of an earlier program has none. */
  readonly waived: readonly string[] | undefined;
  /** Undefined while the cases and the policy say whether units are kept apart. */
  readonly unitsApart: UnitsApart | undefined;
  readonly team: Readonly<Partial<Record<StaffId, ShiftDraft>>>;
  readonly times: Readonly<
    Partial<Record<PersonId, { readonly from: string; readonly until: string }>>
  >;
}

/** How a field tells the draft what somebody chose. */
export interface Told {
  readonly set: (change: Partial<PlanningDraft>) => void;
  readonly setShift: (staff: StaffId, change: Partial<ShiftDraft>) => void;
}

export const newPlanning: PlanningDraft = {
  ...{ begins: '', pairs: 1, mayChange: false },
  ...{ couriers: [], meals: undefined, together: [] },
  ...{ waived: [], unitsApart: undefined },
  ...{ team: {}, times: {} },
};
