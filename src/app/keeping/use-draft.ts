import { useEffect, useReducer } from 'preact/hooks';
import { useLocation } from 'wouter-preact';
import { useDesk } from '../desk/desk.ts';
import { draftAt, dropDraft, holdDraft, onDrafts } from './draft-store.ts';

export interface DraftOf<Fields extends object> {
  readonly value: Fields;
  /** The fields as they were when typing began. */
  readonly start: Fields;
  readonly set: (change: Partial<Fields>) => void;
  /** Typing begins anew from these fields, with what was typed since kept. */
  readonly begin: (start: Fields) => void;
  readonly drop: () => void;
}

/**
 * The fields of a form on this page. What was typed is still there after going elsewhere and back.
 * `initial` is what the record says now; it counts until the first change.
 */
export function useDraft<Fields extends object>(initial: Fields, title: string): DraftOf<Fields> {
  const { me } = useDesk();
  const [path] = useLocation();
  const [, redraw] = useReducer((count: number, _: undefined) => count + 1, 0);
  // Those of a colleague who takes the tablet come out of the drawer a moment later.
  useEffect(() => onDrafts(() => redraw(undefined)), []);
  const held = draftAt(me, path);
  // What came back may have been typed into an earlier form, which had fewer fields.
  const start: Fields = { ...initial, ...held?.start };
  const value: Fields = { ...initial, ...held?.value };
  const hold = (from: Fields, to: Fields): void => {
    if (same(from, to)) dropDraft(me, path);
    else holdDraft(me, { path, title, start: from, value: to });
    redraw(undefined);
  };
  // Two fields may change in one event: each must build on the other, not on what was drawn.
  const latest = (): Fields => ({ ...initial, ...draftAt(me, path)?.value });
  return {
    value,
    start,
    set: (change) => hold(start, { ...latest(), ...change }),
    begin: (from) => hold(from, latest()),
    drop: () => dropDraft(me, path),
  };
}

const same = (one: object, other: object): boolean => JSON.stringify(one) === JSON.stringify(other);
