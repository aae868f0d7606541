import type { PersonId, StaffId } from '../../../../care/ids.ts';

export interface ShiftDraft {
  readonly on: boolean;
  /** Wall times, HH:mm; empty where nothing was said. */
  readonly from: string;
  readonly until: string;
}

/** What somebody told the planner about the day: nothing of it is in the ledger. */
export interface PlanningDraft {
  readonly begins: string;
  readonly pairs: number;
  readonly mayChange: boolean;
  readonly team: Readonly<Partial<Record<StaffId, ShiftDraft>>>;
  readonly times: Readonly<
    Partial<Record<PersonId, { readonly from: string; readonly until: string }>>
  >;
}

export const newPlanning: PlanningDraft = {
  ...{ begins: '', pairs: 1, mayChange: false },
  ...{ team: {}, times: {} },
};
