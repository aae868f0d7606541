/** Why there is no picture. */
export type CameraFault = 'not-allowed' | 'no-camera' | 'in-use' | 'not-secure' | 'failed';

export type OpenedCamera =
  | { readonly ok: true; readonly stream: MediaStream; readonly torch: boolean }
  | { readonly ok: false; readonly fault: CameraFault };

/** At 640 × 480 thin bars are missed; more than this only costs time. */
const WANTED = {
  facingMode: { ideal: 'environment' },
  width: { ideal: 1280 },
  height: { ideal: 720 },
};

const FAULTS: Readonly<Record<string, CameraFault>> = {
  NotAllowedError: 'not-allowed',
  SecurityError: 'not-allowed',
  NotFoundError: 'no-camera',
  OverconstrainedError: 'no-camera',
  NotReadableError: 'in-use',
  AbortError: 'in-use',
};

/** Whether this device could have a camera to ask for: not so on a page without a secure context. */
export const mayHaveCamera = (): boolean =>
  typeof navigator !== 'undefined' &&
  (navigator.mediaDevices as MediaDevices | undefined)?.getUserMedia !== undefined;

export async function openCamera(): Promise<OpenedCamera> {
  if (!mayHaveCamera()) return { ok: false, fault: 'not-secure' };
  try {
    const stream = await navigator.mediaDevices.getUserMedia({ video: WANTED, audio: false });
    return { ok: true, stream, torch: hasTorch(stream) };
  } catch (error) {
    const name = error instanceof DOMException ? error.name : '';
    return { ok: false, fault: FAULTS[name] ?? 'failed' };
  }
}

// The torch is in the Image Capture draft and in browsers, and not yet in TypeScript's DOM types.
interface Torch {
  readonly torch?: boolean;
}

const hasTorch = (stream: MediaStream): boolean =>
  (stream.getVideoTracks()[0]?.getCapabilities() as Torch | undefined)?.torch === true;

/** Puts the light on or off; says whether it did as asked. */
export async function setTorch(stream: MediaStream, on: boolean): Promise<boolean> {
  const [track] = stream.getVideoTracks();
  try {
    await track?.applyConstraints({ advanced: [{ torch: on } as MediaTrackConstraintSet] });
    return track !== undefined;
  } catch {
    return false;
  }
}

export function closeCamera(stream: MediaStream): void {
  for (const track of stream.getTracks()) track.stop();
}
