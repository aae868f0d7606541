import type { Theme } from '../../pieces/form/theme.ts';
import { applyTheme, themeOf } from '../../pieces/form/theme.ts';

const KEY = 'theme';

/** The theme kept on this tablet: "day" or "night", about nobody. A browser that keeps nothing says "auto". */
export function keptTheme(): Theme {
  try {
    return themeOf(localStorage.getItem(KEY));
  } catch {
    return 'auto';
  }
}

/** Puts a theme on the page and keeps it for the next time. */
export function chooseTheme(theme: Theme): void {
  applyTheme(document.documentElement, theme);
  try {
    if (theme === 'auto') localStorage.removeItem(KEY);
    else localStorage.setItem(KEY, theme);
  } catch {
    // A browser that keeps nothing shows it until it is closed.
  }
}
