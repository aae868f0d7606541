import type { JSX } from 'preact';
import { iconPaths } from './icon-paths.ts';
import './icon.css';

export type IconName = keyof typeof iconPaths;

/** A small drawing beside words; silent, because the words say it. */
export function Icon({ name }: { readonly name: IconName }): JSX.Element {
  return (
    <svg class="icon" data-icon={name} viewBox="0 0 32 32" aria-hidden="true">
      <path d={iconPaths[name]} />
    </svg>
  );
}
