import type { DemoSource } from '../demo/source.ts';
import type { Interfaces } from '../home-network/addresses.ts';
import type { World } from '../service/open.ts';

/** The machine a server runs on; only a main.ts (or a test) brings one. */
export interface Machine extends World {
  readonly pid: number;
  readonly hostName: string;
  readonly interfaces: () => Interfaces;
  /** The machine's own time zone. */
  readonly zone: string;
  /** The invented home that an empty folder becomes. */
  readonly demo: DemoSource;
  readonly appFolder: string;
  readonly log: { write(line: string): void };
  /** Prints to whoever started it. */
  readonly say: (text: string) => void;
  readonly isTerminal: boolean;
}
