import type { ComponentChildren, JSX } from 'preact';
import './detail-list.css';

export interface Detail {
  readonly key: string;
  readonly label: ComponentChildren;
  readonly value: ComponentChildren;
}

/** What is known about one thing: a name for each detail, then what it says. */
export function DetailList({ details }: { readonly details: readonly Detail[] }): JSX.Element {
  return (
    <dl class="detail-list">
      {details.map(({ key, label, value }) => (
        <div key={key}>
          <dt>{label}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}
