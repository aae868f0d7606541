import { useEffect } from 'preact/hooks';

/**
 * The focus is never left nowhere: when the control that had it goes, what it stood in takes it; when it
 * is moved, it keeps it. Whatever
 * a page does of its own about its focus comes first.
 */
export function useKeptFocus(): void {
  useEffect(keepFocus, []);
}

/** Begins to watch; returns what ends it. */
function keepFocus(): () => void {
  /** What has the focus, and all that it stands in, from the inside out. */
  let stood: readonly Element[] = [];
  /** A finger's focus goes to a heading only: a field would call up the keyboard on the glass. */
  let byKeys = false;

  const remember = ({ target }: FocusEvent): void => {
    if (!(target instanceof Element)) return;
    stood = withAncestors(target);
    byKeys = target.matches(':focus-visible');
  };
  // Pressed beside every control: the focus was left of somebody's own accord.
  const pressed = (): void => {
    setTimeout(() => {
      const { activeElement } = document;
      stood = activeElement === null || nowhere() ? [] : withAncestors(activeElement);
    });
  };
  // What had it is gone, or was moved to another place on the page, which takes it away too.
  const lost = (): boolean => stood.length > 0 && nowhere();
  // A page's own effects run after the next frame; this runs after those.
  const watch = new MutationObserver(() => {
    if (!lost()) return;
    requestAnimationFrame(() =>
      setTimeout(() => {
        if (lost()) restore(stood, byKeys);
      }),
    );
  });

  document.addEventListener('focusin', remember);
  document.addEventListener('pointerdown', pressed);
  watch.observe(document.body, { childList: true, subtree: true });
  return () => {
    watch.disconnect();
    document.removeEventListener('focusin', remember);
    document.removeEventListener('pointerdown', pressed);
  };
}

const nowhere = (): boolean =>
  document.activeElement === null || document.activeElement === document.body;

function withAncestors(element: Element): Element[] {
  const stood = [];
  for (let at: Element | null = element; at !== null; at = at.parentElement) stood.push(at);
  return stood;
}

/** From the nearest thing that is still there outwards, until something can take the focus. */
function restore(stood: readonly Element[], byKeys: boolean): void {
  const main = document.querySelector('main');
  const [held] = stood;
  if (held instanceof HTMLElement && held.isConnected) {
    held.focus({ preventScroll: true });
    if (!nowhere()) return;
  }
  for (const place of stood) {
    if (!place.isConnected || place.contains(main)) continue;
    if (take(place === main ? undefined : standIn(place, byKeys), byKeys)) return;
  }
  take(main?.querySelector<HTMLElement>('h1') ?? main ?? undefined, byKeys);
}

/** In a part of a page: the form that came up in it, its heading, or the first thing to press. */
function standIn(place: Element, byKeys: boolean): HTMLElement | undefined {
  const shown = (which: string): HTMLElement | undefined =>
    [...place.querySelectorAll<HTMLElement>(which)].find(
      (each) => each.getClientRects().length > 0 && !each.matches(':disabled'),
    );
  const field = byKeys ? shown('form input, form select, form textarea') : undefined;
  return field ?? shown('h1, h2, h3, h4') ?? shown('button, a[href], input, select, textarea');
}

function take(element: HTMLElement | undefined, byKeys: boolean): boolean {
  if (element === undefined) return false;
  if (element.tabIndex < 0) element.tabIndex = -1;
  element.focus({ preventScroll: !byKeys });
  return document.activeElement === element;
}
