import type { JSX } from 'preact';
import { useWords } from '../../words/use-words.ts';
import { Choice } from './choice.tsx';
import type { Theme } from './theme.ts';

export interface ThemeChoiceProps {
  readonly theme: Theme;
  readonly onTheme: (theme: Theme) => void;
}

/** Day, night, or as the tablet is set. */
export function ThemeChoice({ theme, onTheme }: ThemeChoiceProps): JSX.Element {
  const { form } = useWords();
  return (
    <Choice
      id="theme"
      label={form.theme}
      inline
      value={theme}
      onValue={(picked) => onTheme(picked === '' ? 'auto' : picked)}
      options={[
        { value: 'auto', label: form.themes.auto },
        { value: 'day', label: form.themes.day },
        { value: 'night', label: form.themes.night },
      ]}
    />
  );
}
