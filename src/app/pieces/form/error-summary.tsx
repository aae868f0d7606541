import type { JSX } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { useWords } from '../../words/use-words.ts';
import './error-summary.css';

export interface FormProblem {
  /** The id of the field. */
  readonly field: string;
  /** What is wrong, where, and what to do. */
  readonly text: string;
}

export interface ErrorSummaryProps {
  readonly problems: readonly FormProblem[];
  /** Grows with every try to send the form: the summary then takes the focus. */
  readonly attempt: number;
}

/** Heads a form that could not be kept: everything to put right, each leading to its field. */
export function ErrorSummary({ problems, attempt }: ErrorSummaryProps): JSX.Element | null {
  const { form } = useWords();
  const box = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    if (attempt > 0) box.current?.focus();
  }, [attempt]);
  if (problems.length === 0) return null;
  return (
    <div
      ref={box}
      class="error-summary"
      role="alert"
      tabIndex={-1}
      aria-labelledby="error-summary-title"
    >
      <h2 id="error-summary-title">{form.problems(problems.length)}</h2>
      <ul>
        {problems.map((problem) => (
          <li key={problem.field}>
            <a href={`#${problem.field}`} onClick={(event) => goTo(event, problem.field)}>
              {problem.text}
            </a>
          </li>
        ))}
      </ul>
    </div>
  );
}

/** The address is the router's: move the focus, not the address. */
function goTo(event: Event, id: string): void {
  event.preventDefault();
  const field = document.getElementById(id);
  const inside = field?.querySelector<HTMLElement>('input, select, textarea');
  (field?.tagName === 'FIELDSET' ? (inside ?? field) : field)?.focus();
}
