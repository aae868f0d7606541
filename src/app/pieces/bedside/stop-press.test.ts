import { describe, expect, it } from 'vitest';
import { type StopEvent, type StopPress, stopPress } from './stop-press.ts';

function fired(...events: readonly StopEvent[]): number {
  let state: StopPress = 'idle';
  let count = 0;
  for (const event of events) {
    const step = stopPress(state, event);
    state = step.state;
    if (step.fires) count += 1;
  }
  return count;
}

describe('the stop button', () => {
  it('hears a plain tap once', () => expect(fired('down', 'lift', 'click')).toBe(1));
  it('hears a finger that slides off', () => expect(fired('down', 'lift')).toBe(1));
  it('hears a touch the device takes away', () => expect(fired('down', 'cancel')).toBe(1));
  it('hears a key or a screen reader, which only click', () => expect(fired('key')).toBe(1));
  it('hears a click with no touch before it', () => expect(fired('click')).toBe(1));
  it('hears a second press after the first', () =>
    expect(fired('down', 'lift', 'click', 'down', 'lift', 'click')).toBe(2));
  it('hears a key after a touch that slid off and left no click', () =>
    expect(fired('down', 'lift', 'key')).toBe(2));
  it('does nothing for a finger that only passes over', () => expect(fired('lift')).toBe(0));
});
