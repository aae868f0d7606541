// Imported before anything is drawn, so that a tablet set to night never flashes white.
import { applyTheme } from '../../pieces/form/theme.ts';
import { keptTheme } from './theme-store.ts';

applyTheme(document.documentElement, keptTheme());
