import type { Command } from 'commander';

/** A command's own file: it adds itself, with its options, to the program. */
export interface CommandModule {
  readonly register: (program: Command) => void;
}
