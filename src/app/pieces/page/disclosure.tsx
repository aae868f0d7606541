import type { ComponentChildren, JSX } from 'preact';
import { Icon } from '../icon/icon.tsx';
import './disclosure.css';

export interface DisclosureProps {
  /** What is inside, with how much of it. */
  readonly title: ComponentChildren;
  readonly children: ComponentChildren;
}

/** The browser's own details: shut until somebody asks. For what is seldom needed, never for a warning. */
export function Disclosure({ title, children }: DisclosureProps): JSX.Element {
  return (
    <details class="disclosure">
      <summary>
        <Icon name="down" />
        <span>{title}</span>
      </summary>
      <div class="disclosure-body">{children}</div>
    </details>
  );
}
