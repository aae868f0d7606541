export type Theme = 'auto' | 'day' | 'night';

/** Any kept text to a theme; what is not one means "as the tablet is". */
export function themeOf(kept: string | null): Theme {
  return kept === 'day' || kept === 'night' ? kept : 'auto';
}

/** Puts a theme on the page. `auto` leaves it to the device. */
export function applyTheme(root: HTMLElement, theme: Theme): void {
  if (theme === 'auto') delete root.dataset['theme'];
  else root.dataset['theme'] = theme;
}
