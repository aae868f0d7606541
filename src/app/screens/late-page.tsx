import type { JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { Button } from '../pieces/form/button.tsx';
import { useWords } from '../words/use-words.ts';
import { EmptyPage } from './empty-page.tsx';

type Page = () => JSX.Element;

/**
 * A page whose script is fetched when somebody first goes there, and says so if it does not come. The words
 * that only such pages need (useAllWords) are fetched beside it.
 */
export function latePage(load: () => Promise<Page>): Page {
  let loaded: Page | undefined;
  return function LatePage(): JSX.Element {
    const { keeping } = useWords();
    const [state, setState] = useState<'waiting' | 'here' | 'failed'>(
      loaded === undefined ? 'waiting' : 'here',
    );
    useEffect(() => {
      if (state !== 'waiting') return;
      Promise.all([load(), import('./with-all-words.tsx')]).then(
        ([Late, { WithAllWords }]) => {
          loaded = () => (
            <WithAllWords>
              <Late />
            </WithAllWords>
          );
          setState('here');
        },
        () => setState('failed'),
      );
    }, [state]);
    if (state === 'here' && loaded !== undefined) {
      const Loaded = loaded;
      return <Loaded />;
    }
    if (state === 'waiting') return <p role="status">{keeping.loading}</p>;
    const again = <Button onPress={() => setState('waiting')}>{keeping.again}</Button>;
    return <EmptyPage title={keeping.notLoaded} action={again} />;
  };
}
