/** Colours for the web app manifest and the theme-color meta elements: the same as `--paper`. */
export const manifestColours = {
  background: '#f6f2e9',
  theme: '#f6f2e9',
  themeNight: '#110f0b',
} as const;
