import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { SyncLoop } from './loop.ts';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

function loopWith(outcomes: ('met' | 'failed')[], live = false) {
  const times: number[] = [];
  const attempt = vi.fn(() => {
    times.push(Date.now());
    return Promise.resolve(outcomes.shift() ?? 'met');
  });
  vi.setSystemTime(0);
  return { times, loop: new SyncLoop({ attempt, chance: () => 1, isLive: () => live }) };
}

describe('when a tablet syncs', () => {
  it('comes back after failures, slower each time, and then at its own pace', async () => {
    const { times, loop } = loopWith(['failed', 'failed', 'failed', 'met', 'met']);
    loop.nudge();
    await vi.advanceTimersByTimeAsync(68_000);
    expect(times).toEqual([0, 1000, 3000, 7000, 67_000]);
    await loop.stop();
  });

  it('does not hammer a server that is away, but tries at once when asked to', async () => {
    const { times, loop } = loopWith(['failed', 'met']);
    loop.nudge();
    await vi.advanceTimersByTimeAsync(100);
    loop.nudge();
    await vi.advanceTimersByTimeAsync(100);
    expect(times).toEqual([0]);
    await loop.now();
    expect(times).toEqual([0, 200]);
    await loop.stop();
  });

  it('makes one attempt at a time, and one more for all that was asked meanwhile', async () => {
    const { times, loop } = loopWith([]);
    for (let i = 0; i < 5; i++) loop.nudge();
    await vi.advanceTimersByTimeAsync(10);
    expect(times.length).toBe(2);
    await loop.stop();
  });

  it('does not lose news that comes while the first attempt after failures is under way', async () => {
    const { times, loop } = loopWith(['failed', 'met', 'met'], true);
    loop.nudge();
    await vi.advanceTimersByTimeAsync(100);
    void loop.now();
    loop.nudge();
    await vi.advanceTimersByTimeAsync(1000);
    expect(times).toEqual([0, 100, 100]);
    await loop.stop();
  });

  it('waits its turn if the attempt fails during which news came', async () => {
    const { times, loop } = loopWith(['failed', 'failed', 'met'], true);
    loop.nudge();
    await vi.advanceTimersByTimeAsync(100);
    void loop.now();
    loop.nudge();
    await vi.advanceTimersByTimeAsync(1999);
    expect(times).toEqual([0, 100]);
    await vi.advanceTimersByTimeAsync(1);
    expect(times).toEqual([0, 100, 2100]);
    await loop.stop();
  });

  it('asks seldom while the server tells by itself, and never again once stopped', async () => {
    const { times, loop } = loopWith([], true);
    loop.nudge();
    await vi.advanceTimersByTimeAsync(301_000);
    expect(times).toEqual([0, 300_000]);
    await loop.stop();
    await vi.advanceTimersByTimeAsync(900_000);
    expect(times.length).toBe(2);
  });
});
