import type { RefObject } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import type { CameraFault } from './camera-stream.ts';
import { closeCamera, openCamera } from './camera-stream.ts';
import type { Decoder } from './decoder.ts';
import { startDecoder } from './decoder.ts';
import { frameTaker } from './frame.ts';
import type { Light } from './light.ts';
import { lightOf } from './light.ts';
import type { Expect, WatchFinding } from './watch.ts';
import { watch, watching } from './watch.ts';

export interface CameraState {
  readonly stream: MediaStream | undefined;
  readonly torch: boolean;
  readonly fault: CameraFault | 'reader' | undefined;
  readonly seen: WatchFinding['kind'];
  readonly light: Light;
}

const AT_FIRST: CameraState = {
  stream: undefined,
  torch: false,
  fault: undefined,
  seen: 'looking',
  light: 'good',
};

/** Longest rest between two pictures, in ms: ten a second read at once and spare the battery. */
const REST_MS = 60;

/** Opens the camera while it is shown and reads picture after picture, one at a time. */
export function useCamera(
  video: RefObject<HTMLVideoElement>,
  { expect, onCode }: { readonly expect: Expect; readonly onCode: (code: string) => void },
): CameraState {
  const [state, setState] = useState(AT_FIRST);
  const latest = useRef({ expect, onCode });
  latest.current = { expect, onCode };

  useEffect(() => {
    let open = true;
    const decoder = startDecoder();
    let stream: MediaStream | undefined;
    void openCamera().then((opened) => {
      if (!opened.ok) {
        if (open) setState({ ...AT_FIRST, fault: opened.fault });
        return;
      }
      stream = opened.stream;
      if (!open) {
        closeCamera(stream);
        return;
      }
      setState({ ...AT_FIRST, stream, torch: opened.torch });
      if (video.current !== null) video.current.srcObject = stream;
      void readOn(decoder, {
        video: () => video.current,
        isOpen: () => open,
        asked: () => latest.current,
        tell: (change) => setState((before) => changed(before, change)),
      });
    });
    return () => {
      open = false;
      decoder.close();
      if (stream !== undefined) closeCamera(stream);
    };
  }, [video]);

  return state;
}

/** The same state where nothing differs, so that ten pictures a second draw nothing anew. */
const changed = (before: CameraState, change: Partial<CameraState>): CameraState =>
  Object.entries(change).every(([key, value]) => before[key as keyof CameraState] === value)
    ? before
    : { ...before, ...change };

interface Reading {
  readonly video: () => HTMLVideoElement | null;
  readonly isOpen: () => boolean;
  readonly asked: () => { readonly expect: Expect; readonly onCode: (code: string) => void };
  readonly tell: (change: Partial<CameraState>) => void;
}

async function readOn(decoder: Decoder, reading: Reading): Promise<void> {
  const take = frameTaker();
  let state = watching;
  while (reading.isOpen()) {
    const video = reading.video();
    const picture = video === null ? undefined : take(video);
    if (picture !== undefined) {
      const light = lightOf(picture);
      const answer = await decoder.read(picture).catch(() => undefined);
      if (!reading.isOpen()) return;
      if (answer === undefined) {
        reading.tell({ fault: 'reader' });
        return;
      }
      const { expect, onCode } = reading.asked();
      const step = watch(state, answer.symbols, { at: performance.now(), expect });
      ({ state } = step);
      reading.tell({ seen: step.finding.kind, light });
      if (step.finding.kind === 'code') onCode(step.finding.code);
    }
    await rest();
  }
}

const rest = (): Promise<void> => new Promise((resume) => setTimeout(resume, REST_MS));
