import type { JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { useLocation } from 'wouter-preact';
import { useDesk } from '../desk/desk.ts';
import { Button } from '../pieces/form/button.tsx';
import { Notice } from '../pieces/list/notice.tsx';
import { to } from '../screens/paths.ts';
import { useWords } from '../words/use-words.ts';
import { draftsOf, dropDraft, onDrafts } from './draft-store.ts';

const warn = (event: BeforeUnloadEvent): void => event.preventDefault();

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
    window.addEventListener('beforeunload', warn);
    return () => window.removeEventListener('beforeunload', warn);
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
              <Button href={to(draft.path)} label={`${keeping.goOn}: ${draft.title}`}>
                {keeping.goOn}
              </Button>
              <Button
                kind="quiet"
                onPress={() => dropDraft(me, draft.path)}
                label={`${keeping.dropIt}: ${draft.title}`}
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
