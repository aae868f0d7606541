import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader';
import wasm from 'zxing-wasm/reader/zxing_reader.wasm?url';
import type { Answer, Ask } from './reading.ts';
import { OPTIONS, symbolOf } from './reading.ts';

// From our own origin, so that it works with no signal once it has been kept.
void prepareZXingModule({
  overrides: { locateFile: (path: string) => (path.endsWith('.wasm') ? wasm : path) },
  fireImmediately: true,
});

async function answer({ id, data, width, height }: Ask): Promise<Answer> {
  const from = performance.now();
  try {
    const image = new ImageData(new Uint8ClampedArray(data), width, height);
    const found = await readBarcodes(image, OPTIONS);
    return { id, symbols: found.map(symbolOf), took: performance.now() - from };
  } catch {
    return { id, symbols: [], took: performance.now() - from, failed: true };
  }
}

addEventListener('message', ({ data }: MessageEvent<Ask>) => {
  void answer(data).then((told) => {
    postMessage(told);
  });
});
