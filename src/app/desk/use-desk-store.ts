import { useEffect, useState } from 'preact/hooks';
import type { Desk } from './desk.ts';

/** Something that holds the present desk and tells when there is a new one. */
export interface DeskStore {
  readonly desk: () => Desk;
  readonly subscribe: (changed: () => void) => () => void;
}

export function useDeskStore(store: DeskStore): Desk {
  const [desk, setDesk] = useState(store.desk);
  useEffect(() => {
    const take = () => setDesk(store.desk());
    take();
    return store.subscribe(take);
  }, [store]);
  return desk;
}
