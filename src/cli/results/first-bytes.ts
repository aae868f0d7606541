import { closeSync, openSync, readSync } from 'node:fs';

/** The beginning of a file, by which its form is known. */
export function firstBytes(file: string, count: number): Buffer {
  const handle = openSync(file, 'r');
  try {
    const bytes = Buffer.alloc(count);
    return bytes.subarray(0, readSync(handle, bytes, 0, count, 0));
  } finally {
    closeSync(handle);
  }
}
