import type { JSX } from 'preact';
import './person-badge.css';

export interface PersonBadgeProps {
  readonly name: string;
  /** Address of a photo, if the person has one and agreed to its use. */
  readonly photo?: string | undefined;
  readonly size?: 'large' | 'small';
}

/** A face, or the first letter. The name stands beside it, so the picture itself is silent. */
export function PersonBadge({ name, photo, size = 'small' }: PersonBadgeProps): JSX.Element {
  return (
    <span class="person-badge" data-size={size} aria-hidden="true">
      {photo === undefined ? Array.from(name)[0] : <img src={photo} alt="" />}
    </span>
  );
}
