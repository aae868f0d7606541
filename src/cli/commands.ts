import type { CommandModule } from './command-module.ts';

interface CommandEntry {
  /** One line for the list of commands. */
  readonly summary: string;
  /** Loads the command's file only when the command is used, so that every start is quick. */
  readonly load: () => Promise<CommandModule>;
}

/** Every command of `tallyround`. To add one: a file under commands/, and a line here. */
export const COMMANDS: Readonly<Record<string, CommandEntry>> = {
  turnaround: {
    summary: 'how long results are out, and when one now out should come',
    load: () => import('./commands/turnaround.ts'),
  },
  results: {
    summary: 'what stands in a file of results, in any of the formats taken',
    load: () => import('./commands/results.ts'),
  },
  interpret: {
    summary: 'what a test result says, given the chance before',
    load: () => import('./commands/interpret.ts'),
  },
  clear: {
    summary: 'the chance that a home is clear after a round without a positive',
    load: () => import('./commands/clear.ts'),
  },
  voids: { summary: 'control charts of void tests', load: () => import('./commands/voids.ts') },
  reproduction: {
    summary: 'growth and reproduction number from daily cases',
    load: () => import('./commands/reproduction.ts'),
  },
  'final-size': {
    summary: 'how large an outbreak in a home may get, exactly',
    load: () => import('./commands/final-size.ts'),
  },
  reorder: {
    summary: 'when to order kits, and what may expire',
    load: () => import('./commands/reorder.ts'),
  },
  plan: {
    summary: 'the order of a round that can be kept, or what to change so that it can',
    load: () => import('./commands/plan.ts'),
  },
  'check-code': {
    summary: 'check digits and near-miss codes',
    load: () => import('./commands/check-code.ts'),
  },
};

/** What is done to a service on its data folder. */
export const UPKEEP: Readonly<Record<string, CommandEntry>> = {
  begin: { summary: 'begin a real service', load: () => import('./upkeep/begin.ts') },
  verify: {
    summary: 'count every id and link of a service again',
    load: () => import('./upkeep/verify.ts'),
  },
  backup: { summary: 'everything in one sealed file', load: () => import('./upkeep/backup.ts') },
  restore: {
    summary: 'put a service back from a sealed backup',
    load: () => import('./upkeep/restore.ts'),
  },
  export: {
    summary: 'the facts without names, for an inspector',
    load: () => import('./upkeep/export.ts'),
  },
  'reset-pin': {
    summary: 'a PIN for one sign-in',
    load: () => import('./upkeep/reset-pin.ts'),
  },
  'group-secret': {
    summary: 'draw the secret of a group of homes',
    load: () => import('./upkeep/group-secret.ts'),
  },
  erase: {
    summary: 'erase names and notes of whoever has gone, for good',
    load: () => import('./upkeep/erase.ts'),
  },
  tablets: { summary: 'list tablets, or refuse one', load: () => import('./upkeep/tablets.ts') },
};
