import type { JSX } from 'preact';
import { useMemo, useRef } from 'preact/hooks';
import { Route, Router, Switch, useRoute } from 'wouter-preact';
import { useHashLocation } from 'wouter-preact/use-hash-location';
import type { PersonId, RoundId } from '../care/ids.ts';
import { memberOf } from '../care/staff/member.ts';
import { DeskProvider, useDesk } from './desk/desk.ts';
import type { DeskStore } from './desk/use-desk-store.ts';
import { useDeskStore } from './desk/use-desk-store.ts';
import { useWordSettings } from './desk/use-word-settings.ts';
import { Unkept } from './keeping/unkept.tsx';
import { StepMemoryProvider } from './pieces/bedside/use-step-focus.ts';
import { Button } from './pieces/form/button.tsx';
import { Notice } from './pieces/list/notice.tsx';
import type { NavItem } from './pieces/page/page-shell.tsx';
import { PageShell } from './pieces/page/page-shell.tsx';
import { useKeptFocus } from './pieces/page/use-kept-focus.ts';
import { Pages } from './screens/pages.tsx';
import { paths, to } from './screens/paths.ts';
import { TurnScreen } from './screens/turn/turn-screen.tsx';
import { english } from './words/en.ts';
import { useWords, WordsProvider } from './words/use-words.ts';

/** The app for whoever is signed in. A turn has the whole screen; every other page stands in the shell. */
export function App({ store }: { readonly store: DeskStore }): JSX.Element {
  const desk = useDeskStore(store);
  const settings = useWordSettings(desk);
  const words = useMemo(() => english(settings), [settings]);
  const steps = useRef({ step: '', onBigButton: false });
  useKeptFocus();
  return (
    <DeskProvider value={desk}>
      <WordsProvider value={words}>
        <Router hook={useHashLocation}>
          <Switch>
            <Route path="/round/:round/turn/:person">
              {({ round, person }: { round: string; person: string }) => (
                <StepMemoryProvider value={steps.current}>
                  <TurnScreen key={person} round={round as RoundId} person={person as PersonId} />
                </StepMemoryProvider>
              )}
            </Route>
            <Route>
              <Shell />
            </Route>
          </Switch>
        </Router>
      </WordsProvider>
    </DeskProvider>
  );
}

function Shell(): JSX.Element {
  const desk = useDesk();
  const words = useWords();
  const me = memberOf(desk.home, desk.me);
  const role = me.role === undefined ? '' : `, ${words.roles[me.role]}`;
  return (
    <PageShell
      service={desk.service.name}
      nav={useNav()}
      who={`${me.name}${role}`}
      onLock={desk.lock}
      onHands={desk.changeHands}
      sync={desk.sync}
      storage={desk.notices.storage}
    >
      <TabletNotices />
      <Unkept />
      <Pages />
    </PageShell>
  );
}

/** What somebody should know of the tablet itself, over whatever page is open. */
function TabletNotices(): JSX.Element {
  const { notices } = useDesk();
  const { door } = useWords();
  const { problem, update } = notices;
  return (
    <>
      {problem !== undefined && <Notice kind="look" title={door.problems[problem]} />}
      {update !== undefined && (
        <Notice
          kind="note"
          title={door.update}
          action={<Button onPress={update}>{door.updateNow}</Button>}
        />
      )}
    </>
  );
}

/** The parts of the app; an address belongs to the part whose work it is. */
function useNav(): NavItem[] {
  const { nav } = useWords();
  const parts = [
    { path: paths.now, label: nav.now, under: /^\/(findings?(\/.*)?)?$/ },
    { path: paths.rounds, label: nav.rounds, under: /^\/(rounds?|upload)(\/|$)/ },
    { path: paths.people, label: nav.people, under: /^\/(people|person)(\/|$)/ },
    { path: paths.results, label: nav.results, under: /^\/(results|test)(\/|$)/ },
    { path: paths.kits, label: nav.kits, under: /^\/kits(\/|$)/ },
    { path: paths.more, label: nav.more, under: /^\/(more|staff|policy|tablets)(\/|$)/ },
  ];
  const [, params] = useRoute('/*?');
  const here = `/${params?.['*'] ?? ''}`;
  return parts.map(({ path, label, under }) => ({
    href: to(path),
    label,
    current: under.test(here),
  }));
}
