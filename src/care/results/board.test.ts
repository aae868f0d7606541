import { describe, expect, it } from 'vitest';
import { house, sendAll } from '../../../test/trial/house.ts';
import { kitCode } from '../../../test/trial/round.ts';
import { doAction, recordResult } from '../../procedures/record-result.ts';
import type { Day } from '../time.ts';
import { after, HOUR } from '../time.ts';
import type { Board } from './board.ts';
import { resultsBoard } from './board.ts';

const ids = (board: Board) => ({
  late: board.late.map(({ swab }) => swab.test.id),
  waiting: board.waiting.map(({ swab }) => swab.test.id),
  held: board.held.map(({ test }) => test.id),
  toAct: board.toAct.map(({ test }) => test.id),
  known: board.known.map(({ test }) => test.id),
});

describe('where every result stands', () => {
  it('a swab is in one place only: waiting, late, held, to act on, or settled', () => {
    const all = house();
    const { trial } = all;
    const [oriel, tamsin, bram] = sendAll(all);
    const swabbed = trial.now;
    const give = (at: number, more: object) =>
      trial.must(
        recordResult(
          trial.home,
          {
            code: kitCode(at),
            how: 'scanned',
            outcome: 'negative',
            reported: '2026-03-03' as Day,
            second: undefined,
            ...more,
          },
          trial.doing,
        ),
      );
    expect(ids(resultsBoard(trial.home, trial.now))).toEqual({
      ...{ late: [], waiting: [oriel, tamsin, bram], held: [], toAct: [], known: [] },
    });
    give(1, { second: { is: 'born', value: '1941-06-02' } });
    give(2, { doubtful: true });
    const later = after(swabbed, 80 * HOUR);
    expect(ids(resultsBoard(trial.home, later))).toEqual({
      ...{ late: [bram], waiting: [], held: [tamsin], toAct: [oriel], known: [] },
    });
    trial.must(
      doAction(trial.home, { test: oriel!, action: 'tell-person', outcome: 'done', note: '' }),
    );
    expect(ids(resultsBoard(trial.home, later)).known).toEqual([oriel]);
  });

  // 72 h is 72 h: on 29 March 2026 the clocks in London go on by an hour.
  it('a result is late after 72 hours, not after three days on the wall', () => {
    const all = house();
    const { trial } = all;
    sendAll(all);
    const first = resultsBoard(trial.home, trial.now).waiting[0]!;
    expect(first.dueBy).toBe(after(first.since, 72 * HOUR));
    expect(resultsBoard(trial.home, first.dueBy).late).toEqual([]);
    expect(resultsBoard(trial.home, after(first.dueBy, 1)).late).toHaveLength(1);
  });
});
