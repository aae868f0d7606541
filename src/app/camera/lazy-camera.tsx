import type { FunctionComponent, JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { useWords } from '../words/use-words.ts';
import type { CameraViewProps } from './camera-view.tsx';

/** The camera's view, its code fetched when it is first asked for: most scans come from a scanner. */
export function LazyCamera(props: CameraViewProps): JSX.Element {
  const { camera } = useWords();
  const [View, setView] = useState<FunctionComponent<CameraViewProps> | 'failed'>();
  useEffect(() => {
    import('./camera-view.tsx').then(
      (loaded) => setView(() => loaded.CameraView),
      () => setView('failed'),
    );
  }, []);
  if (View === undefined) return <p role="status">{camera.loading}</p>;
  if (View === 'failed') return <p role="status">{camera.faults.reader}</p>;
  return <View {...props} />;
}
