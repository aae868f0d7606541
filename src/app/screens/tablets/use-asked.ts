import { useEffect, useState } from 'preact/hooks';
import { useDesk } from '../../desk/desk.ts';

export interface Asked<T> {
  /** Undefined until the server has answered, or when it does not. */
  readonly value: T | undefined;
  readonly again: () => void;
}

/** What the server says now, for a manager. */
export function useAsked<T>(path: string): Asked<T> {
  const { server, session } = useDesk();
  const [value, setValue] = useState<T | undefined>(undefined);
  const [count, setCount] = useState(0);
  useEffect(() => {
    if (!session) return;
    void server?.ask<T>('GET', path).then((heard) => setValue(heard.ok ? heard.value : undefined));
  }, [path, session, count]);
  return { value, again: () => setCount((n) => n + 1) };
}
