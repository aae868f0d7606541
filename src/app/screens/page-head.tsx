import type { ComponentChildren, JSX } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { hasMoved } from './arrivals.ts';
import './page-head.css';

export interface PageHeadProps {
  readonly title: string;
  /** A line or two beneath the title. */
  readonly children?: ComponentChildren;
}

/** The title of a page. It takes the focus on arrival, so that a screen reader says where one is. */
export function PageHead({ title, children }: PageHeadProps): JSX.Element {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    if (!hasMoved()) return;
    window.scrollTo(0, 0);
    heading.current?.focus({ preventScroll: true });
  }, []);
  return (
    <header class="page-title">
      <h1 ref={heading} tabIndex={-1}>
        {title}
      </h1>
      {children}
    </header>
  );
}
