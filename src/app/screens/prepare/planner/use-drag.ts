import { useState } from 'preact/hooks';

export interface DragPlace {
  readonly lane: number;
  readonly at: number;
}

/** Which row of a plan lies under a point: rows say their place in `data-place`. */
function placeUnder(x: number, y: number): DragPlace | undefined {
  const row = document.elementFromPoint(x, y)?.closest<HTMLElement>('[data-place]');
  const [lane, at] = (row?.dataset['place'] ?? '').split(' ').map(Number);
  return lane === undefined || at === undefined ? undefined : { lane, at };
}

export interface Drag {
  /** Whom somebody is dragging, and over which row. */
  readonly who: string | undefined;
  readonly over: DragPlace | undefined;
  readonly handlers: (person: string) => {
    readonly onPointerDown: (event: PointerEvent) => void;
    readonly onPointerMove: (event: PointerEvent) => void;
    readonly onPointerUp: (event: PointerEvent) => void;
    readonly onPointerCancel: () => void;
  };
}

/** Dragging by a handle, with finger, pen or mouse. What it does can be done by buttons too. */
export function useDrag(onDrop: (person: string, to: DragPlace) => void): Drag {
  const [who, setWho] = useState<string | undefined>(undefined);
  const [over, setOver] = useState<DragPlace | undefined>(undefined);
  const end = (): void => {
    setWho(undefined);
    setOver(undefined);
  };
  return {
    who,
    over,
    handlers: (person) => ({
      onPointerDown: (event) => {
        (event.currentTarget as HTMLElement).setPointerCapture(event.pointerId);
        setWho(person);
      },
      onPointerMove: (event) => {
        if (who === person) setOver(placeUnder(event.clientX, event.clientY));
      },
      onPointerUp: (event) => {
        const to = placeUnder(event.clientX, event.clientY);
        if (who === person && to) onDrop(person, to);
        end();
      },
      onPointerCancel: end,
    }),
  };
}
