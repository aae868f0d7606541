import { defineConfig } from 'vite';

// The server as one file of plain JavaScript: Node 20 does not read TypeScript. Packages stay outside.
export default defineConfig({
  publicDir: false,
  build: {
    ssr: 'src/server/main.ts',
    outDir: 'dist/server',
    emptyOutDir: true,
    target: 'node20',
    sourcemap: true,
  },
});
