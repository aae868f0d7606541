import type { JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { useLocation } from 'wouter-preact';
import { useDesk } from '../desk/desk.ts';
import { Button } from '../pieces/form/button.tsx';
import { Notice } from '../pieces/list/notice.tsx';
import { to } from '../screens/paths.ts';
import { useWords } from '../words/use-words.ts';
import { draftsOf, dropDraft, onDrafts } from './draft-store.ts';

/** Somebody who touched the page so lately is still there, and can answer a question. */
const PRESENT_MS = 30_000;
let touchedAt = -Infinity;
const touched = (): void => {
  touchedAt = performance.now();
};

/** Never asks an empty chair: a tablet that locks itself must not wait for an answer. */
const warn = (event: BeforeUnloadEvent): void => {
  if (performance.now() - touchedAt < PRESENT_MS) event.preventDefault();
};

const TOUCHES = ['pointerdown', 'keydown'] as const;

/** What was typed elsewhere and is not kept yet: always in sight, so that leaving a form loses nothing. */
export function Unkept(): JSX.Element | null {
  const { me } = useDesk();
  const { keeping } = useWords();
  const [path] = useLocation();
  const [, redraw] = useState(0);
  useEffect(() => onDrafts(() => redraw((count) => count + 1)), []);
  const drafts = draftsOf(me);
  const any = drafts.length > 0;
  useEffect(() => {
    if (!any) return undefined;
    touched();
    window.addEventListener('beforeunload', warn);
    for (const kind of TOUCHES) window.addEventListener(kind, touched, true);
    return () => {
      window.removeEventListener('beforeunload', warn);
      for (const kind of TOUCHES) window.removeEventListener(kind, touched, true);
    };
  }, [any]);
  const elsewhere = drafts.filter((draft) => draft.path !== path);
  if (elsewhere.length === 0) return null;
  return (
    <>
      {elsewhere.map((draft) => (
        <Notice
          key={draft.path}
          kind="look"
          title={keeping.unkept}
          action={
            <div class="button-row">
              <Button href={to(draft.path)} label={keeping.goOnWith(draft.title)}>
                {keeping.goOn}
              </Button>
              <Button
                kind="quiet"
                onPress={() => dropDraft(me, draft.path)}
                label={keeping.dropThat(draft.title)}
              >
                {keeping.dropIt}
              </Button>
            </div>
          }
        >
          {draft.title}.
        </Notice>
      ))}
    </>
  );
}
