import type { ComponentChildren, JSX } from 'preact';
import { Button } from '../pieces/form/button.tsx';
import { ErrorSummary } from '../pieces/form/error-summary.tsx';
import type { IconName } from '../pieces/icon/icon.tsx';
import type { Keep } from './use-keep.ts';
import { KEEP_ROW } from './use-keep.ts';

export interface KeepFormProps {
  readonly keep: Keep;
  readonly onKeep: () => Promise<void>;
  /** What pressing the main button does. */
  readonly label: string;
  readonly icon?: IconName;
  /** Where the page's main button is another one. */
  readonly lesser?: boolean;
  /** Further buttons beside it, such as the way back. */
  readonly beside?: ComponentChildren;
  readonly class?: string;
  readonly children: ComponentChildren;
}

/** A form within a page: what is wrong stands on top, Enter keeps, and nothing is kept before that. */
export function KeepForm({ keep, onKeep, ...props }: KeepFormProps): JSX.Element {
  return (
    <form
      class={props.class === undefined ? 'form-grid' : `form-grid ${props.class}`}
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void onKeep();
      }}
    >
      <ErrorSummary problems={keep.problems} attempt={keep.attempt} />
      {props.children}
      <div id={KEEP_ROW} class="button-row" tabIndex={-1}>
        <Button submit kind={props.lesser === true ? 'plain' : 'main'} icon={props.icon}>
          {props.label}
        </Button>
        {props.beside}
      </div>
    </form>
  );
}
