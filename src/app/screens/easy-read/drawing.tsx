import type { JSX } from 'preact';
import type { PictureName } from '../../../care/easy-read/pictures.ts';
import { pictures } from '../../../care/easy-read/pictures.ts';
import type { Shape } from '../../../care/easy-read/shapes.ts';
import './easy-read.css';

/** One picture. The sentence under it says what it shows, so a screen reader hears it once. */
export function Drawing({ picture }: { readonly picture: PictureName }): JSX.Element {
  const shapes: readonly Shape[] = pictures[picture];
  return (
    <svg class="drawing" viewBox="0 0 100 100" aria-hidden="true">
      {shapes.map((shape, i) => (
        <path
          key={i}
          d={shape.d}
          class={`${shape.fill ? `fill-${shape.fill}` : 'no-fill'} ${shape.line ? `line-${shape.line}` : ''}`}
          stroke-width={shape.line === undefined ? 0 : shape.wide}
        />
      ))}
    </svg>
  );
}
