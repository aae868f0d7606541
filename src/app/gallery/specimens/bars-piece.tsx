import type { JSX } from 'preact';
import { labelStocks } from '../../../exchange/documents/label-stocks.ts';
import { Sheets } from '../../screens/labels/label-sheet-page.tsx';

const codes = ['WH9GQY5CKT4', 'WHJS07ENW36'];

/** A sheet of labels as the tablet prints it, from the second label on. */
export function BarsPiece(): JSX.Element {
  const [stock] = labelStocks;
  return <main>{stock !== undefined && <Sheets codes={codes} stock={stock} startAt={2} />}</main>;
}
