import { type ComponentChildren, createContext, type JSX } from 'preact';
import { useCallback, useContext, useState } from 'preact/hooks';

type Announce = (text: string) => void;

const LiveContext = createContext<Announce>(() => undefined);

/** Says something to a screen reader without moving the focus. */
export function useAnnounce(): Announce {
  return useContext(LiveContext);
}

interface Said {
  readonly text: string;
  readonly turn: number;
}

/** Two regions used in turn, so that the same words said twice are heard twice. */
export function LiveRegion({ children }: { readonly children: ComponentChildren }): JSX.Element {
  const [said, setSaid] = useState<Said>({ text: '', turn: 0 });
  const announce = useCallback<Announce>(
    (text) => setSaid(({ turn }) => ({ text, turn: 1 - turn })),
    [],
  );
  return (
    <LiveContext.Provider value={announce}>
      {children}
      {[0, 1].map((turn) => (
        <p key={turn} class="unseen" role="status">
          {said.turn === turn ? said.text : ''}
        </p>
      ))}
    </LiveContext.Provider>
  );
}
