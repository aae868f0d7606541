import type { Command } from 'commander';
import { verifyService } from '../../server/operations/verify.ts';
import { folderOf, onFolder, say, telling } from './command.ts';
import { world } from './main.ts';

export function register(program: Command): void {
  onFolder(program, 'verify', {
    about:
      'Counts every id, link and private record again. Exit 0: sound; 1: something to explain; 2: broken.',
    example: 'tallyround verify --data data',
  }).action(
    telling(async (options: { data: string }) => {
      const { ledger, accounts, exit } = await verifyService(folderOf(options), world);
      say(`${ledger.facts} facts, the last at position ${ledger.reached.position}.`);
      say(`Chain value: ${ledger.reached.chain}`);
      if (ledger.broken)
        say(
          `Broken at position ${ledger.broken.position}: ${ledger.broken.reason}. Put back the last backup that verifies.`,
        );
      for (const { kind, key } of ledger.findings) say(`To explain: ${kind} ${key}`);
      for (const id of ledger.unexplained) say(`Private record missing, and not erased: ${id}`);
      for (const fault of accounts) say(`Accounts: ${fault}`);
      if (exit === 0) say('All sound.');
      return exit;
    }),
  );
}
