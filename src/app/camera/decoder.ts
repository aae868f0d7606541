import type { Answer, Ask } from './reading.ts';

export interface Decoder {
  /** Reads one picture. The picture's buffer is gone afterwards. Rejects where the reader broke. */
  readonly read: (picture: ImageData) => Promise<Answer>;
  readonly close: () => void;
}

/** Starts the reader in its worker. */
export function startDecoder(): Decoder {
  const worker = new Worker(new URL('./decode-worker.ts', import.meta.url), { type: 'module' });
  const waiting = new Map<number, { done: (answer: Answer) => void; fail: (why: Error) => void }>();
  let asked = 0;
  const breakOff = (why: string): void => {
    for (const each of waiting.values()) each.fail(new Error(why));
    waiting.clear();
  };
  worker.addEventListener('message', ({ data }: MessageEvent<Answer>) => {
    const each = waiting.get(data.id);
    waiting.delete(data.id);
    if (data.failed === true) each?.fail(new Error('the reader could not start'));
    else each?.done(data);
  });
  worker.addEventListener('error', () => breakOff('the reader broke'));
  return {
    read: (picture) =>
      new Promise((done, fail) => {
        const id = (asked += 1);
        waiting.set(id, { done, fail });
        const { width, height } = picture;
        const data = picture.data.buffer;
        const ask: Ask = { id, data, width, height };
        worker.postMessage(ask, [data]);
      }),
    close: () => {
      worker.terminate();
      breakOff('closed');
    },
  };
}
