import type { ComponentChildren, JSX } from 'preact';
import { Bead } from '../frame/bead.tsx';
import './empty-state.css';

export interface EmptyStateProps {
  readonly title: string;
  /** Why it is empty and what would fill it. */
  readonly children?: ComponentChildren;
  readonly action?: ComponentChildren;
}

/** A wire with nothing on it yet. */
export function EmptyState({ title, children, action }: EmptyStateProps): JSX.Element {
  return (
    <div class="empty-state">
      <span class="empty-wire" aria-hidden="true">
        <Bead state="todo" />
      </span>
      <h2>{title}</h2>
      {children !== undefined && <p>{children}</p>}
      {action}
    </div>
  );
}
