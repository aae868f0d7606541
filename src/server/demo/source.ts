import type { StaffId } from '../../care/ids.ts';
import type { Day, Instant, Zone } from '../../care/time.ts';
import type { Desk, Penned } from '../service/write-facts.ts';

/** Where an invented home comes from. Only a main.ts chooses one. */
export interface DemoSource {
  readonly title: string;
  readonly zone: Zone;
  readonly make: (asked: DemoAsked) => DemoHome;
}

export interface DemoAsked extends Desk {
  readonly now: Instant;
  readonly today: Day;
  readonly zone: Zone;
}

/** Everything that has happened there, on the server's own chain, and who may sign in. */
export interface DemoHome extends Penned {
  readonly staff: readonly DemoStaff[];
}

export interface DemoStaff {
  readonly id: StaffId;
  readonly name: string;
  readonly role: string;
  readonly pin: string;
}
