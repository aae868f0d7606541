/** One message, said: where it stands in the catalogue and what it says. */
export interface Said {
  readonly path: string;
  readonly text: string;
}

/** Every message of a catalogue, those that take something called with their samples. */
export function everyMessage(words: unknown, samples: unknown, path = ''): readonly Said[] {
  if (typeof words === 'string') return [{ path, text: words }];
  if (typeof words === 'function') {
    if (!Array.isArray(samples)) throw new Error(`no sample for ${path}`);
    const say = words as (...args: readonly unknown[]) => unknown;
    return [{ path, text: String(say(...(samples as readonly unknown[]))) }];
  }
  if (typeof words !== 'object' || words === null) return [];
  return Object.entries(words).flatMap(([key, part]) =>
    everyMessage(
      part,
      (samples as Readonly<Record<string, unknown>> | undefined)?.[key],
      `${path}/${key}`,
    ),
  );
}
