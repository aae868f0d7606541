import type { JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { Drawing } from '../../../exchange/barcodes/svg-paths.ts';
import { useWords } from '../../words/use-words.ts';
import { codeGroups } from './code-groups.ts';
import './code-bars.css';

/**
 * A code as bars that a scanner reads, with its signs in groups of four below. What draws the bars is
 * fetched when it is first needed.
 */
export function CodeBars({ code }: { readonly code: string }): JSX.Element {
  const { scan } = useWords();
  const [drawing, setDrawing] = useState<Drawing>();
  useEffect(() => {
    let shown = true;
    void import('./draw-bars.ts').then(({ drawBars }) => {
      if (shown) setDrawing(drawBars(code));
    });
    return () => {
      shown = false;
    };
  }, [code]);
  return (
    <figure class="code-bars">
      {drawing !== undefined && (
        <svg
          viewBox={`-10 0 ${String(drawing.width + 20)} ${String(drawing.height)}`}
          preserveAspectRatio="none"
          role="img"
          aria-label={scan.spell(code)}
        >
          {drawing.paths.map(({ d, stroke }) => (
            <path
              key={d}
              d={d}
              {...(stroke === undefined ? {} : { stroke: 'black', 'stroke-width': stroke })}
            />
          ))}
        </svg>
      )}
      <figcaption aria-hidden="true">{codeGroups(code).join(' ')}</figcaption>
    </figure>
  );
}
