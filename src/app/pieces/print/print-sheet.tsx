import type { ComponentChildren, JSX } from 'preact';
import { useWords } from '../../words/use-words.ts';
import { BrandMark } from '../page/brand-mark.tsx';
import './print-sheet.css';

export interface PrintSheetProps {
  readonly service: string;
  readonly title: string;
  /** When it was made and by whom: paper goes out of date. */
  readonly made: string;
  /** Said at the foot of every sheet, such as who may see it. */
  readonly foot?: string | undefined;
  readonly page?: { readonly page: number; readonly of: number } | undefined;
  readonly children: ComponentChildren;
}

/** One A4 sheet, on screen as it will be on paper. */
export function PrintSheet(props: PrintSheetProps): JSX.Element {
  const { list } = useWords();
  return (
    <article class="print-sheet">
      <header>
        <BrandMark />
        <div>
          <h1>{props.title}</h1>
          <p>{props.service}</p>
        </div>
        <p class="print-made">{props.made}</p>
      </header>
      <div class="print-body">{props.children}</div>
      <footer>
        <p>{props.foot}</p>
        {props.page !== undefined && <p>{list.page(props.page)}</p>}
      </footer>
    </article>
  );
}
