import type { JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader';
import wasm from 'zxing-wasm/reader/zxing_reader.wasm?url';
import { openCamera } from '../../camera/camera-stream.ts';
import { startDecoder } from '../../camera/decoder.ts';
import { frameTaker } from '../../camera/frame.ts';
import { lightOf } from '../../camera/light.ts';
import { OPTIONS } from '../../camera/reading.ts';

/** How long one picture takes: the reader alone on the whole picture, and everything that we do. */
export interface DecodeTimes {
  readonly bare: readonly number[];
  /** The whole picture taken from the camera and given to the reader, with nothing else. */
  readonly plain: readonly number[];
  /** The reader alone on the part that lies in the frame. */
  readonly bareFrame: readonly number[];
  readonly ours: readonly number[];
  readonly found: number;
}

const ROUNDS = 40;
const WARM = 5;

async function measure(): Promise<DecodeTimes> {
  const opened = await openCamera();
  if (!opened.ok) throw new Error(opened.fault);
  const video = document.createElement('video');
  Object.assign(video, { srcObject: opened.stream, muted: true });
  await video.play();
  await prepareZXingModule({ overrides: { locateFile: () => wasm }, fireImmediately: true });
  const decoder = startDecoder();
  const take = frameTaker();
  const whole = document.createElement('canvas');
  Object.assign(whole, { width: video.videoWidth, height: video.videoHeight });
  const context = whole.getContext('2d', { willReadFrequently: true });
  context?.drawImage(video, 0, 0);
  const picture = context?.getImageData(0, 0, whole.width, whole.height);
  const [bare, plain, bareFrame, ours]: [number[], number[], number[], number[]] = [[], [], [], []];
  let found = 0;
  for (let i = 0; i < ROUNDS + WARM; i += 1) {
    const timed = async (into: number[], work: () => Promise<void>) => {
      const from = performance.now();
      await work();
      if (i >= WARM) into.push(performance.now() - from);
    };
    await timed(bare, async () => {
      if (picture !== undefined) await readBarcodes(picture, OPTIONS);
    });
    await timed(plain, async () => {
      context?.drawImage(video, 0, 0);
      const taken = context?.getImageData(0, 0, whole.width, whole.height);
      if (taken !== undefined) await readBarcodes(taken, OPTIONS);
    });
    const framed = take(video);
    await timed(bareFrame, async () => {
      if (framed !== undefined) await readBarcodes(framed, OPTIONS);
    });
    await timed(ours, async () => {
      const shown = take(video);
      if (shown === undefined) return;
      lightOf(shown);
      const { symbols } = await decoder.read(shown);
      if (symbols.some((symbol) => symbol.whole)) found += 1;
    });
  }
  decoder.close();
  return { bare, plain, bareFrame, ours, found };
}

export function CameraBench(): JSX.Element {
  const [times, setTimes] = useState<DecodeTimes>();
  useEffect(() => void measure().then(setTimes), []);
  return <pre id="times">{times === undefined ? '' : JSON.stringify(times)}</pre>;
}
