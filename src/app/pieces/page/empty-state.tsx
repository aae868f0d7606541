import type { ComponentChildren, JSX, RefObject } from 'preact';
import { Bead } from '../frame/bead.tsx';
import './empty-state.css';

export interface EmptyStateProps {
  readonly title: string;
  /** Why it is empty and what would fill it. */
  readonly children?: ComponentChildren;
  readonly action?: ComponentChildren;
  /** Where nothing else stands on the page: its title is the page's. */
  readonly pageTitle?: RefObject<HTMLHeadingElement>;
}

/** A wire with nothing on it yet. */
export function EmptyState(props: EmptyStateProps): JSX.Element {
  const { title, children, action, pageTitle } = props;
  return (
    <div class="empty-state">
      <span class="empty-wire" aria-hidden="true">
        <Bead state="todo" />
      </span>
      {pageTitle === undefined ? (
        <h2>{title}</h2>
      ) : (
        <h1 ref={pageTitle} tabIndex={-1}>
          {title}
        </h1>
      )}
      {children !== undefined && <p>{children}</p>}
      {action}
    </div>
  );
}
