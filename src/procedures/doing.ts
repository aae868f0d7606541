import type { NewFact } from '../care/catalogue.ts';
import type { Home } from '../care/home.ts';
import type { DrawId, StaffId } from '../care/ids.ts';
import type { Decided } from '../care/refusal.ts';
import type { Day, Instant } from '../care/time.ts';
import { dayOf } from '../care/time.ts';

/** Who is doing something, when, on which device. Clock and chance come from outside. */
export interface Doing {
  readonly now: Instant;
  /** Who is signed in on this device. */
  readonly by: StaffId;
  readonly device: string;
  readonly draw: DrawId;
  /**
   * Which other homes of the group have used a code, by what they call themselves where they say so;
   * undefined where none has. Absent where no server could be asked: then the server asks later.
   */
  readonly usedElsewhere?: (code: string) => readonly string[] | undefined;
}

/** What a procedure answers: facts to append together, or why not. Nothing else changes anything. */
export type Outcome = Decided<readonly NewFact[]>;

export const today = (home: Home, doing: Doing): Day => dayOf(doing.now, home.service.zone);
