import type { StaffId } from '../../care/ids.ts';

/** What somebody has typed on one page and not kept yet. */
export interface Draft {
  /** Where the form stands. */
  readonly path: string;
  /** What the form is, for the line that says it is not kept yet. */
  readonly title: string;
  /** The fields as they were when typing began, and as they are now. */
  readonly start: object;
  readonly value: object;
}

/**
 * By whose they are: after a change of hands nobody sees another's. In memory here; `sealed-drafts.ts`
 * carries them over a lock.
 */
const drafts = new Map<StaffId, Map<string, Draft>>();
const listeners = new Set<() => void>();

const tell = (): void => {
  for (const listener of listeners) listener();
};

export const draftAt = (me: StaffId, path: string): Draft | undefined => drafts.get(me)?.get(path);
export const draftsOf = (me: StaffId): readonly Draft[] => [...(drafts.get(me)?.values() ?? [])];

export function holdDraft(me: StaffId, draft: Draft): void {
  const mine = drafts.get(me) ?? new Map<string, Draft>();
  mine.set(draft.path, draft);
  drafts.set(me, mine);
  tell();
}

/** What was typed before the tablet locked comes back to whoever typed it. */
export function putDrafts(me: StaffId, theirs: readonly Draft[]): void {
  drafts.set(me, new Map(theirs.map((draft) => [draft.path, draft])));
  tell();
}

export function dropDraft(me: StaffId, path: string): void {
  if (drafts.get(me)?.delete(path) === true) tell();
}

export function onDrafts(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}
