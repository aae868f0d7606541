import { describe, expect, it } from 'vitest';
import { leaseOver } from './lease.ts';

const DAY = 86_400_000;
const contact = { deviceAt: 100 * DAY, leaseMs: 7 * DAY };
const over = (deviceNow: number, highest = contact.deviceAt) =>
  leaseOver(contact, { deviceNow, highest });

describe('how long a PIN opens a tablet without a signal', () => {
  it('is as many days as the policy says', () => {
    expect(over(107 * DAY)).toBe(false);
    expect(over(107 * DAY + 1)).toBe(true);
  });

  it('is over when the clock was set back, behind the last contact or behind any later use', () => {
    expect(over(100 * DAY - 5 * 60_000)).toBe(false);
    expect(over(100 * DAY - 5 * 60_000 - 1)).toBe(true);
    expect(over(102 * DAY, 105 * DAY)).toBe(true);
    expect(over(105 * DAY, 105 * DAY)).toBe(false);
  });
});
