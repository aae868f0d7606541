import type { ComponentChildren, JSX } from 'preact';
import { Button } from '../pieces/form/button.tsx';
import { ErrorSummary } from '../pieces/form/error-summary.tsx';
import { PageHead } from '../screens/page-head.tsx';
import { to } from '../screens/paths.ts';
import { useWords } from '../words/use-words.ts';
import type { Keep } from './use-keep.ts';
import { KEEP_ROW } from './use-keep.ts';
import './record-form.css';

export interface RecordFormProps {
  readonly title: string;
  /** Whom it is about, and what to know before typing. */
  readonly lead?: ComponentChildren;
  /** Where one came from and goes back to. */
  readonly back: string;
  readonly keep: Keep;
  readonly onKeep: () => void;
  /** What pressing it does; "Keep" where there is nothing more to say. */
  readonly label?: string;
  /** What stands above the fields and has a form of its own, such as typing a code. */
  readonly before?: ComponentChildren;
  readonly children: ComponentChildren;
}

/** The page of a form. Enter in a field keeps; nothing is kept before that. */
export function RecordForm(props: RecordFormProps): JSX.Element {
  const { keeping } = useWords();
  const { keep, title, lead, back } = props;
  const submit = (event: Event): void => {
    event.preventDefault();
    props.onKeep();
  };
  return (
    <>
      <PageHead title={title}>{lead}</PageHead>
      <ErrorSummary problems={keep.problems} attempt={keep.attempt} />
      {props.before}
      <form class="record-form" onSubmit={submit} noValidate>
        {props.children}
        <div id={KEEP_ROW} class="button-row" tabIndex={-1}>
          <Button kind="main" submit>
            {props.label ?? keeping.keep}
          </Button>
          <Button kind="quiet" href={to(back)}>
            {keeping.back}
          </Button>
        </div>
      </form>
    </>
  );
}
