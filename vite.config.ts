import { preact } from '@preact/preset-vite';
import { defineConfig } from 'vite';
import { offline } from './vite.offline.ts';

// The production build of the offline app. Nothing is inlined as data: or as script, so that a strict
// Content-Security-Policy holds.
export default defineConfig({
  root: 'src/app',
  base: '/',
  plugins: [preact(), offline()],
  build: {
    outDir: '../../dist/app',
    emptyOutDir: true,
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
  },
});
