import type { JSX } from 'preact';
import { Route, Switch } from 'wouter-preact';
import type { RoundId } from '../../care/ids.ts';
import { Button } from '../pieces/form/button.tsx';
import { useWords } from '../words/use-words.ts';
import { EmptyPage } from './empty-page.tsx';
import './arrivals.ts';
import { latePage } from './late-page.tsx';
import { NowScreen } from './now/now-screen.tsx';
import { paths, to } from './paths.ts';
import { RoundScreen } from './round/round-screen.tsx';

const RoundWorkPages = latePage(() =>
  import('./round-work-pages.tsx').then(({ RoundWorkPages: pages }) => pages),
);

const RecordPages = latePage(() =>
  import('./record-pages.tsx').then(({ RecordPages: pages }) => pages),
);

/** Which page stands at which address (paths.ts). */
export function Pages(): JSX.Element {
  return (
    <Switch>
      <Route path="/" component={NowScreen} />
      <Route path="/round/:id">
        {({ id }: { id: string }) => <RoundScreen round={id as RoundId} />}
      </Route>
      <Route path={/^\/(rounds|round|results|test|findings|finding|upload)(\/|$)/}>
        <RoundWorkPages />
      </Route>
      <Route path={/^\/(people|person|staff|kits|policy|tablets|more)(\/|$)/}>
        <RecordPages />
      </Route>
      <Route>
        <NotHere />
      </Route>
    </Switch>
  );
}

function NotHere(): JSX.Element {
  const { nav } = useWords();
  return (
    <EmptyPage title={nav.notHere} action={<Button href={to(paths.now)}>{nav.backToNow}</Button>} />
  );
}
