import type { JSX } from 'preact';
import { useRef, useState } from 'preact/hooks';
import { Button } from '../pieces/form/button.tsx';
import { CodeText } from '../pieces/scan/code-text.tsx';
import { useWords } from '../words/use-words.ts';
import { setTorch } from './camera-stream.ts';
import { playRead, soundWanted, wantSound } from './sound.ts';
import type { CameraState } from './use-camera.ts';
import { useCamera } from './use-camera.ts';
import type { Expect } from './watch.ts';
import './camera-view.css';

export interface CameraViewProps {
  readonly expect?: Expect | undefined;
  readonly onCode: (code: string) => void;
  readonly onClose: () => void;
}

/** The camera's picture with a frame in it. A code that lies in the frame is read, said back and taken. */
export function CameraView({ expect = 'label', onCode, onClose }: CameraViewProps): JSX.Element {
  const { camera } = useWords();
  const video = useRef<HTMLVideoElement>(null);
  const [read, setRead] = useState<string>();
  const [sound, setSound] = useState(soundWanted);
  const state = useCamera(video, {
    expect,
    onCode: (code) => {
      setRead(code);
      if (sound) playRead();
      onCode(code);
    },
  });
  const toggleSound = (): void => {
    wantSound(!sound);
    setSound(!sound);
  };
  return (
    <div class="camera-view">
      {state.fault === undefined && (
        <div class="camera-picture">
          {/* biome-ignore lint/a11y/useMediaCaption: a live picture without sound */}
          <video ref={video} autoplay playsinline muted aria-label={camera.picture} />
          <div class="camera-frame" aria-hidden="true" />
        </div>
      )}
      <p role="status">{said(state, camera)}</p>
      {read !== undefined && (
        <p class="camera-read">
          {camera.read} <CodeText code={read} />
        </p>
      )}
      <div class="button-row">
        {state.torch && state.stream !== undefined && <TorchButton stream={state.stream} />}
        <Button onPress={toggleSound}>{sound ? camera.soundOff : camera.soundOn}</Button>
        <Button icon="close" onPress={onClose}>
          {camera.close}
        </Button>
      </div>
    </div>
  );
}

type CameraWords = ReturnType<typeof useWords>['camera'];

function said({ fault, stream, seen, light }: CameraState, words: CameraWords): string {
  if (fault !== undefined) return words.faults[fault];
  if (stream === undefined) return words.opening;
  if (seen === 'looking' && light === 'dark') return words.light.dark;
  // White paper may look like glare: it is only named where nothing could be read for a while.
  if (seen === 'slow' && light !== 'good') return words.light[light];
  return words.seen[seen];
}

function TorchButton({ stream }: { readonly stream: MediaStream }): JSX.Element {
  const { camera } = useWords();
  const [on, setOn] = useState(false);
  const press = (): void =>
    void setTorch(stream, !on).then((done) => {
      if (done) setOn(!on);
    });
  return <Button onPress={press}>{on ? camera.torchOff : camera.torchOn}</Button>;
}
