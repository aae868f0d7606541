import fc from 'fast-check';
import { expect, test } from 'vitest';
import { deviceId, instantOf, isDeviceId, isInstant, isServerDevice, millisOf } from './ids.ts';

test('an instant is one exactly when the platform reads it and writes it back the same', () => {
  const two = (max: number) => fc.integer({ min: 0, max }).map((n) => String(n).padStart(2, '0'));
  const parts = fc.tuple(
    fc.integer({ min: 0, max: 9999 }),
    two(14),
    two(33),
    two(25),
    two(61),
    two(61),
  );
  fc.assert(
    fc.property(parts, ([year, month, day, hour, minute, second]) => {
      const text = `${String(year).padStart(4, '0')}-${month}-${day}T${hour}:${minute}:${second}.007Z`;
      const ms = Date.parse(text);
      expect(isInstant(text)).toBe(!Number.isNaN(ms) && new Date(ms).toISOString() === text);
    }),
    { numRuns: 5000 },
  );
});

test('milliseconds and instants are two ways to say the same, within the years they can say', () => {
  expect(millisOf(instantOf(1_795_600_000_123)!)).toBe(1_795_600_000_123);
  const ms = fc.integer({ min: Date.UTC(1, 0, 1), max: Date.UTC(9999, 11, 31) });
  // Near one another too, as facts come: the day before must not be taken for today's.
  const pairs = fc.tuple(ms, fc.integer({ min: -90_000_000, max: 90_000_000 }));
  fc.assert(
    fc.property(pairs, ([one, apart]) => {
      for (const each of [one, one + apart, one]) {
        const at = instantOf(each);
        if (at !== undefined) expect(millisOf(at)).toBe(each);
      }
    }),
  );
  expect(instantOf(Number.NaN)).toBeUndefined();
  expect(instantOf(8.65e15)).toBeUndefined();
  expect(instantOf(-1e14)).toBeUndefined();
});

test("a device id tells a server's from a tablet's", () => {
  const random = new Uint8Array([255, 0, 1, 2, 3, 4]);
  expect(isDeviceId(deviceId('tablet', random))).toBe(true);
  expect(isServerDevice(deviceId('server', random))).toBe(true);
  expect(isServerDevice(deviceId('tablet', random))).toBe(false);
});
