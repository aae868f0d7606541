import type { ComponentChildren, JSX } from 'preact';
import { useId } from 'preact/hooks';
import './part.css';

export interface PartProps {
  readonly title: string;
  /** What can be done about this part, as one or two Buttons. */
  readonly action?: ComponentChildren;
  readonly children: ComponentChildren;
}

/** One part of a page under its own heading, with what can be done about it beside the heading. */
export function Part({ title, action, children }: PartProps): JSX.Element {
  const id = useId();
  return (
    <section class="part" aria-labelledby={id}>
      <header>
        <h2 id={id}>{title}</h2>
        {action !== undefined && <div class="button-row">{action}</div>}
      </header>
      <div class="part-body">{children}</div>
    </section>
  );
}
