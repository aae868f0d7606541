import type { JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { Bars } from '../../../exchange/barcodes/code128.ts';
import { useAllWords } from '../../words/use-all-words.ts';
import './code-bars.css';

interface Drawn {
  readonly bars: Bars;
  readonly quiet: number;
}

/**
 * A kit's code as Code 128, for the scanner of whoever fills in another body's form. The drawing comes
 * in a script of its own; until it is here, or if it never comes, the code itself stands beside it.
 */
export function CodeBars({ code }: { readonly code: string }): JSX.Element | null {
  const { registering } = useAllWords();
  const [drawn, setDrawn] = useState<Drawn | undefined>(undefined);
  useEffect(() => {
    let wanted = true;
    setDrawn(undefined);
    import('../../../exchange/barcodes/code128.ts').then(
      ({ code128Bars, QUIET }) => {
        if (wanted) setDrawn({ bars: code128Bars(code), quiet: QUIET });
      },
      () => undefined,
    );
    return () => {
      wanted = false;
    };
  }, [code]);
  if (drawn === undefined) return null;
  const { bars, quiet } = drawn;
  const width = bars.modules + 2 * quiet;
  const path = bars.bars.map(({ at, wide }) => `M${at + quiet} 0h${wide}v30h-${wide}z`).join('');
  return (
    <svg
      class="code-bars"
      // Whole pixels for each module where there is room, or the bars come out uneven.
      width={width * (width > 220 ? 2 : 3)}
      height={108}
      viewBox={`0 0 ${width} 30`}
      preserveAspectRatio="none"
      role="img"
      aria-label={registering.bars(code)}
    >
      <path d={path} />
    </svg>
  );
}
