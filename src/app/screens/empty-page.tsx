import type { ComponentChildren, JSX } from 'preact';
import { EmptyState } from '../pieces/page/empty-state.tsx';
import { useArrival } from './use-arrival.ts';

interface EmptyPageProps {
  readonly title: string;
  /** Why there is nothing, and what would fill it. */
  readonly children?: ComponentChildren;
  readonly action?: ComponentChildren;
}

/** An address with nothing to show: its title says why, and takes the focus as any page's does. */
export function EmptyPage(props: EmptyPageProps): JSX.Element {
  const pageTitle = useArrival();
  return <EmptyState {...props} pageTitle={pageTitle} />;
}
