import type { ComponentChildren, JSX } from 'preact';
import { BrandMark } from '../../pieces/page/brand-mark.tsx';
import { LiveRegion } from '../../pieces/page/live-region.tsx';
import './door.css';

/** What stands around the screens before anybody is signed in. */
export function DoorFrame({
  title,
  children,
}: {
  readonly title: string;
  readonly children: ComponentChildren;
}): JSX.Element {
  return (
    <LiveRegion>
      <main id="main" class="door">
        <p class="door-mark">
          <BrandMark />
        </p>
        <h1>{title}</h1>
        {children}
      </main>
    </LiveRegion>
  );
}
