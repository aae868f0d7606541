import type { ComponentChildren, JSX } from 'preact';
import { useId } from 'preact/hooks';
import { useWords } from '../../words/use-words.ts';
import { Wire } from '../frame/wire.tsx';
import type { WireStep } from '../frame/wire-summary.ts';
import { Notice } from '../list/notice.tsx';
import { PersonBadge } from '../list/person-badge.tsx';
import { SyncLine } from '../page/sync-line.tsx';
import type { SyncState } from '../page/sync-state.ts';
import { StopButton } from './stop-button.tsx';
import { useStepFocus } from './use-step-focus.ts';
import './bedside-layout.css';

export interface BedsidePerson {
  readonly name: string;
  /** What they are called to their face; used in "Stop for …". */
  readonly called: string;
  readonly photo?: string | undefined;
}

export interface BedsideLayoutProps {
  readonly person: BedsidePerson;
  /** Lines under the name: a namesake, the kit, the pair. Never the birth date or a code. */
  readonly facts: readonly ComponentChildren[];
  readonly wire: readonly WireStep[];
  /** "Kept here, 14 waiting": the turn goes on all the same. */
  readonly sync?: SyncState | undefined;
  readonly helps: string;
  readonly stopsWhen: string;
  /** Changes with every step; moves the focus and wakes the deafness. */
  readonly step: string;
  readonly title: string;
  readonly children?: ComponentChildren;
  /** Lesser ways out of this step ("Kit fault", "We must leave"), as Buttons. */
  readonly asides?: ComponentChildren;
  /** The BigButton, where the step has one. */
  readonly primary?: ComponentChildren;
  /** Left out only where the turn has already stopped or is settled. */
  readonly onStop?: (() => void) | undefined;
}

/** One person's turn, one step of it: the same places for the same things from first to last. */
export function BedsideLayout(props: BedsideLayoutProps): JSX.Element {
  const words = useWords();
  const heading = useStepFocus(props.step);
  const titleId = useId();
  const { person, onStop } = props;
  return (
    <main id="main" class="bedside" aria-label={words.bedside.turnOf(person.called)}>
      <BedsideHeader {...props} />
      <div class="bedside-signs">
        <Notice kind="helps" title={words.bedside.whatHelps}>
          {props.helps}
        </Notice>
        <Notice kind="stop" title={words.bedside.sayingStopWhen(person.called)}>
          {props.stopsWhen}
        </Notice>
      </div>
      <div class="bedside-step">
        <h1 ref={heading} id={titleId} tabIndex={-1} aria-live="polite">
          {props.title}
        </h1>
        <div class="bedside-content">{props.children}</div>
      </div>
      {props.asides !== undefined && <div class="bedside-asides">{props.asides}</div>}
      {(props.primary !== undefined || onStop !== undefined) && (
        <div class="bedside-hands" role="group" aria-labelledby={titleId}>
          {props.primary}
          {onStop !== undefined && <StopButton name={person.called} onStop={onStop} />}
        </div>
      )}
    </main>
  );
}

type HeaderProps = Pick<BedsideLayoutProps, 'person' | 'facts' | 'wire' | 'sync'>;

function BedsideHeader({ person, facts, wire, sync }: HeaderProps): JSX.Element {
  return (
    <header class="bedside-header">
      <PersonBadge name={person.called} photo={person.photo} size="large" />
      <div class="bedside-who">
        <p class="bedside-name">{person.name}</p>
        {facts.map((fact, i) => (
          <p key={i}>{fact}</p>
        ))}
      </div>
      {sync !== undefined && <SyncLine state={sync} />}
      <Wire steps={wire} name={person.called} />
    </header>
  );
}
