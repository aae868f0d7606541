import * as v from 'valibot';
import type { StaffId } from '../../care/ids.ts';
import type { Drawer } from '../tablet/drawer.ts';
import { draftsOf, onDrafts, putDrafts } from './draft-store.ts';

/** What nobody has decided to keep is not kept for long. A figure of ours: over a weekend. */
export const DRAFTS_LAST_MS = 72 * 3_600_000;
/** Typing is written down in such steps, and at once when the tablet locks. */
const STEP_MS = 400;

const written = v.object({
  at: v.number(),
  drafts: v.array(
    v.object({
      path: v.string(),
      title: v.string(),
      start: v.record(v.string(), v.unknown()),
      value: v.record(v.string(), v.unknown()),
    }),
  ),
});

export interface SealedDrafts {
  /** Whose hands the tablet is in: theirs come out of the drawer, and what they type goes in. */
  handTo(me: StaffId): Promise<void>;
  /** Writes down what was typed last. */
  flush(): Promise<void>;
}

/** Drafts outlive a lock, a crash and an empty battery: sealed on this tablet, each for whoever typed it. */
export function sealedDrafts(drawer: Drawer, now: () => number): SealedDrafts {
  let me: StaffId | undefined;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let unwritten = false;
  let takingOut = false;
  let writing: Promise<void> = Promise.resolve();
  const flush = (): Promise<void> => {
    clearTimeout(timer);
    timer = undefined;
    if (me === undefined || !unwritten) return writing;
    unwritten = false;
    const [whose, drafts] = [me, draftsOf(me)];
    const text = drafts.length === 0 ? undefined : JSON.stringify({ at: now(), drafts });
    // Without room they are still in memory, and facts must have the room that is left.
    writing = writing.then(() => drawer.write(nameOf(whose), text)).catch(() => undefined);
    return writing;
  };
  onDrafts(() => {
    // What comes out of the drawer is in it already, and is no younger for it.
    if (takingOut) return;
    unwritten = true;
    timer ??= setTimeout(() => void flush(), STEP_MS);
  });
  return {
    flush,
    async handTo(next) {
      if (next === me) return;
      await flush();
      me = next;
      const text = await drawer.read(nameOf(next));
      const drafts = text === undefined ? [] : read(text, now());
      // Whoever types already wins over what lay in the drawer.
      const mine = draftsOf(next);
      const older = drafts.filter(({ path }) => mine.every((draft) => draft.path !== path));
      takingOut = true;
      putDrafts(next, [...older, ...mine]);
      takingOut = false;
      if (text !== undefined && drafts.length === 0)
        await drawer.write(nameOf(next), undefined).catch(() => undefined);
    },
  };
}

const nameOf = (staff: StaffId): string => `drafts/${staff}`;

function read(text: string, now: number): v.InferOutput<typeof written>['drafts'] {
  try {
    const { at, drafts } = v.parse(written, JSON.parse(text));
    return Math.abs(now - at) <= DRAFTS_LAST_MS ? drafts : [];
  } catch {
    // Written by a program that wrote them otherwise.
    return [];
  }
}
