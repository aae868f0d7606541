import type { ComponentChildren, JSX } from 'preact';
import { useWords } from '../../words/use-words.ts';
import { Bead } from '../frame/bead.tsx';
import type { BeadState } from '../frame/bead-state.ts';
import './work-list.css';

export interface WorkItem {
  readonly key: string;
  /** What needs somebody, in a sentence. */
  readonly what: ComponentChildren;
  /** By when or since when: short, it stands in the margin. */
  readonly when: string;
  /** Who has it; undefined is said as "no one yet". */
  readonly who?: string | undefined;
  /** The rules that put it here, each in a few words. */
  readonly why: readonly string[];
  /** `look` needs somebody, `hand` is under way, `todo` is still to come. */
  readonly state: Extract<BeadState, 'look' | 'hand' | 'todo'>;
  /** One thing to do, as a Button. */
  readonly action?: ComponentChildren;
}

export interface WorkListProps {
  readonly title: string;
  readonly items: readonly WorkItem[];
}

/** What needs somebody, most urgent first: when in the margin, what in a sentence, who, and why. */
export function WorkList({ title, items }: WorkListProps): JSX.Element {
  return (
    <section class="work">
      <h2>{title}</h2>
      <ol class="work-list">
        {items.map((item) => (
          <WorkLine key={item.key} item={item} />
        ))}
      </ol>
    </section>
  );
}

function WorkLine({ item }: { readonly item: WorkItem }): JSX.Element {
  const { list, frame } = useWords();
  return (
    <li>
      <p class="work-when">
        <Bead state={item.state} />
        <span class="unseen">{frame.states[item.state]}: </span>
        {item.when}
      </p>
      <div class="work-body">
        <p class="work-what">{item.what}</p>
        <ul class="work-why">
          {item.who !== '' && (
            <li class="work-who" data-none={item.who === undefined}>
              <span class="unseen">{list.who} </span>
              {item.who ?? list.noOneYet}
            </li>
          )}
          {item.why.map((rule) => (
            <li key={rule} class="rule-chip">
              <span class="unseen">{list.why} </span>
              {rule}
            </li>
          ))}
        </ul>
      </div>
      {item.action !== undefined && <div class="work-action">{item.action}</div>}
    </li>
  );
}
