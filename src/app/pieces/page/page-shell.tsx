import type { ComponentChildren, JSX } from 'preact';
import { useWords } from '../../words/use-words.ts';
import { Button } from '../form/button.tsx';
import { Notice } from '../list/notice.tsx';
import { BrandMark } from './brand-mark.tsx';
import { LiveRegion } from './live-region.tsx';
import { SyncLine } from './sync-line.tsx';
import type { SyncState } from './sync-state.ts';
import './page-shell.css';

export interface NavItem {
  readonly href: string;
  readonly label: string;
  readonly current?: boolean | undefined;
}

export interface PageShellProps {
  /** The service's name. */
  readonly service: string;
  readonly nav: readonly NavItem[];
  /** Who is signed in, with role. */
  readonly who: string;
  readonly onLock: () => void;
  /** Hands the tablet to a colleague without leaving the page. */
  readonly onHands?: (() => void) | undefined;
  readonly sync: SyncState;
  /** Room on the tablet: nothing said while it is fine. */
  readonly storage?: 'low' | 'mayGo' | undefined;
  readonly children: ComponentChildren;
}

/** Everything around a page that is not a person's turn. */
export function PageShell(props: PageShellProps): JSX.Element {
  const { page } = useWords();
  return (
    <LiveRegion>
      <div class="page-shell">
        <a class="skip-link" href="#main" onClick={skip}>
          {page.skip}
        </a>
        <header class="page-head">
          <p class="page-service">
            <BrandMark />
            {props.service}
          </p>
          <div class="page-who">
            <p>
              <span class="unseen">{page.signedIn} </span>
              {props.who}
            </p>
            {props.onHands !== undefined && (
              <Button icon="person" onPress={props.onHands}>
                {page.hands}
              </Button>
            )}
            <Button icon="lock" onPress={props.onLock}>
              {page.lock}
            </Button>
          </div>
        </header>
        <PageNav nav={props.nav} />
        <div class="page-state">
          <SyncLine state={props.sync} />
        </div>
        <main id="main" tabIndex={-1}>
          {props.storage !== undefined && (
            <Notice kind="look" title={page.storage[props.storage]} />
          )}
          {props.children}
        </main>
      </div>
    </LiveRegion>
  );
}

/** The address is the router's: move the focus, not the address. */
function skip(event: Event): void {
  event.preventDefault();
  document.getElementById('main')?.focus();
}

function PageNav({ nav }: Pick<PageShellProps, 'nav'>): JSX.Element {
  const { page } = useWords();
  return (
    <nav class="page-nav" aria-label={page.nav}>
      <ul>
        {nav.map((item) => (
          <li key={item.href}>
            <a href={item.href} aria-current={item.current === true ? 'page' : undefined}>
              {item.label}
            </a>
          </li>
        ))}
      </ul>
    </nav>
  );
}
