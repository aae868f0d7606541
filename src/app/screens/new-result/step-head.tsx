import type { JSX } from 'preact';
import { useEffect, useRef } from 'preact/hooks';

/** The one thought of a step. It takes the focus, so that a screen reader says where one is. */
export function StepHead({
  title,
  first = false,
}: {
  readonly title: string;
  /** The first step of a page leaves the focus to the page's own title. */
  readonly first?: boolean;
}): JSX.Element {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    if (first) return;
    window.scrollTo(0, 0);
    heading.current?.focus({ preventScroll: true });
  }, []);
  return (
    <h2 ref={heading} class="entry-head" tabIndex={-1}>
      {title}
    </h2>
  );
}
