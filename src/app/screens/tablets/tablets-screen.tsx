import type { JSX } from 'preact';
import { mayAs, useDesk } from '../../desk/desk.ts';
import { Notice } from '../../pieces/list/notice.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { PageHead } from '../page-head.tsx';
import { ChainNotice } from '../parts/chain-notice.tsx';
import { PinList } from './pin-list.tsx';
import { TabletList } from './tablet-list.tsx';

/** Tablets and PINs: what only the server knows, for a manager. */
export function TabletsScreen(): JSX.Element {
  const desk = useDesk();
  const words = useAllWords();
  const say = words.tablets;
  return (
    <>
      <PageHead title={say.title}>
        <p>{say.intro}</p>
      </PageHead>
      <ChainNotice />
      {!mayAs(desk, 'manager') ? (
        <Notice kind="look" title={words.refusals.needsManager} />
      ) : desk.session ? (
        <>
          <TabletList />
          <PinList />
        </>
      ) : (
        <Notice kind="look" title={say.needsServer} />
      )}
    </>
  );
}
