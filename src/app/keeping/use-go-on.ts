import { useLocation } from 'wouter-preact';

const placeNow = (): string => globalThis.location.hash;

/**
 * Goes on to the next page once something is kept. Keeping takes a moment: whoever has gone
 * elsewhere meanwhile is left there, for a page that changes under a finger is pressed by mistake.
 */
export function useGoOn(): (to: string) => void {
  // Drawn anew at every address, so that what is pressed knows the page it was pressed on.
  const [, go] = useLocation();
  const from = placeNow();
  return (to) => {
    if (placeNow() === from) go(to);
  };
}
