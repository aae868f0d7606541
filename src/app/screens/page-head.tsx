import type { ComponentChildren, JSX } from 'preact';
import { useArrival } from './use-arrival.ts';
import './page-head.css';

export interface PageHeadProps {
  readonly title: string;
  /** A line or two beneath the title. */
  readonly children?: ComponentChildren;
}

/** The title of a page. */
export function PageHead({ title, children }: PageHeadProps): JSX.Element {
  const heading = useArrival();
  return (
    <header class="page-title">
      <h1 ref={heading} tabIndex={-1}>
        {title}
      </h1>
      {children}
    </header>
  );
}
