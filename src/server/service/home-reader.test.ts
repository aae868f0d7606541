import { describe, expect, it } from 'vitest';
import { house } from '../../../test/trial/house.ts';
import { kitCode } from '../../../test/trial/round.ts';
import { testByCode } from '../../care/custody/test-by-code.ts';
import type { StaffId } from '../../care/ids.ts';
import type { Code } from '../../care/kind.ts';
import type { Instant } from '../../care/time.ts';
import type { LedgerFact } from '../../ledger/fact.ts';
import type { Head } from '../../ledger/store.ts';
import { writeFromPaper } from '../../procedures/write-from-paper.ts';
import { HomeReader } from './home-reader.ts';

/** A turn written on paper on 3 March and typed in two days later, as the ledger stores its facts. */
function fromPaper() {
  const { trial, people, round } = house();
  trial.at('10:00', '2026-03-05');
  const read = { code: kitCode(1), how: 'scanned' } as const;
  const [swabber, recorder] = ['pia', 'jonah'] as StaffId[];
  trial.must(
    writeFromPaper(
      trial.home,
      {
        ...{ round, person: people[0]!, swabber: swabber!, recorder: recorder!, wrote: recorder! },
        ...{ happened: '2026-03-03T10:00:00.000Z' as Instant, knew: 'birthday', saidYes: true },
        ...{ end: 'taken', kit: { record: read, tube: read, bag: read } },
      },
      trial.doing,
    ),
  );
  // The envelope tells when a fact was typed; when it happened stands in what was written on paper.
  const stored = trial.facts.map(({ entered, ...fact }) => ({
    ...{ v: 1, with: [], off: 0, prev: '', seen: '', size: 1 },
    ...{ ...fact, at: entered ?? fact.at },
  })) as unknown as LedgerFact[];
  return { trial, stored };
}

const readerOf = (
  stored: readonly LedgerFact[],
  { service }: ReturnType<typeof house>['trial']['home'],
) =>
  new HomeReader(
    {
      opened: (after, limit) => Promise.resolve(stored.slice(after, after + limit)),
      head: () => Promise.resolve({ position: stored.length } as Head),
    },
    service,
  );

describe('the home as the server reads it', () => {
  it('has what was on paper at the time when it happened, as a tablet has', async () => {
    const { trial, stored } = fromPaper();
    const home = await readerOf(stored, trial.home).read();
    const taken = testByCode(home, kitCode(1) as Code)?.taken;
    expect(taken?.at).toBe('2026-03-03T10:00:00.000Z');
    expect([...home.known.values()]).toEqual([...trial.home.known.values()]);
  });

  it('notes what it cannot read, of a newer version too, and nothing of what was erased', async () => {
    const { trial, stored } = fromPaper();
    const [first] = stored;
    const odd = { ...first!, kind: 'kit.juggled', id: 'x'.repeat(43) } as LedgerFact;
    const newer = { ...first!, v: 99, id: 'y'.repeat(43) } as LedgerFact;
    const erased = { ...first!, kind: 'erased', id: 'z'.repeat(43) } as LedgerFact;
    const reader = readerOf([...stored, odd, newer, erased], trial.home);
    await reader.read();
    const home = await reader.read();
    expect([...home.unreadable.keys()]).toEqual([odd.id, newer.id]);
    expect(home.known.size).toBe(stored.length);
  });
});
