import type { JSX } from 'preact';
import { NowScreen } from './screens/now.tsx';
import { RoundScreen } from './screens/round.tsx';
import { TurnScreen, turnStates } from './screens/turn.tsx';
import { WalkScreen } from './screens/walk.tsx';
import { BarsPiece } from './specimens/bars-piece.tsx';
import { BedsidePieces } from './specimens/bedside-pieces.tsx';
import { CameraBench } from './specimens/camera-bench.tsx';
import { CameraPiece } from './specimens/camera-piece.tsx';
import { FormPieces } from './specimens/form-pieces.tsx';
import { FramePieces } from './specimens/frame-pieces.tsx';
import { ListPieces } from './specimens/list-pieces.tsx';
import { PagePieces } from './specimens/page-pieces.tsx';
import { SheetPiece } from './specimens/sheet-piece.tsx';

const pages: Readonly<Record<string, () => JSX.Element>> = {
  frame: FramePieces,
  bedside: BedsidePieces,
  bars: BarsPiece,
  camera: CameraPiece,
  'camera-bench': CameraBench,
  form: FormPieces,
  list: ListPieces,
  page: PagePieces,
  sheet: SheetPiece,
  now: NowScreen,
  round: RoundScreen,
  walk: WalkScreen,
  ...Object.fromEntries(
    turnStates.map((state) => [`turn-${state}`, () => <TurnScreen state={state} />]),
  ),
};

/** `?show=` picks one of the pages; anything else lists them. */
export function Gallery({ show }: { readonly show: string }): JSX.Element {
  const Page = pages[show];
  if (Page !== undefined) return <Page />;
  return (
    <main class="gallery">
      <h1>Gallery of pieces</h1>
      <ul>
        {Object.keys(pages).map((page) => (
          <li key={page}>
            <a class="gallery-link" href={`?show=${page}`}>
              {page}
            </a>
          </li>
        ))}
      </ul>
    </main>
  );
}
