import { mergeConfig } from 'vite';
import app from './vite.config.ts';

// The gallery of pieces, for development and tests: the same build, another page.
export default mergeConfig(app, {
  build: {
    outDir: '../../dist/gallery',
    rolldownOptions: { input: 'src/app/gallery/index.html' },
  },
});
