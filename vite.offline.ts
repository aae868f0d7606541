import { VitePWA } from 'vite-plugin-pwa';
import { manifestColours } from './src/app/look/manifest-colours.ts';

/**
 * Everything the program is made of, kept on the tablet at the first visit: with the server gone any
 * address of the app still opens. A newer program waits until the tablet is locked (the app asks it
 * to begin), so that nobody's screen changes in the middle of a turn. Registered by the app itself:
 * the Content-Security-Policy allows no script in the page.
 */
export const offline = () =>
  VitePWA({
    injectRegister: false,
    registerType: 'prompt',
    manifest: {
      id: '/',
      name: 'Tallyround',
      short_name: 'Tallyround',
      description: 'Swab-testing rounds, with or without a signal.',
      start_url: '/',
      display: 'standalone',
      background_color: manifestColours.background,
      theme_color: manifestColours.theme,
      icons: [
        { src: '/icons/icon-192.png', sizes: '192x192', type: 'image/png' },
        { src: '/icons/icon-512.png', sizes: '512x512', type: 'image/png' },
        {
          src: '/icons/maskable-512.png',
          sizes: '512x512',
          type: 'image/png',
          purpose: 'maskable',
        },
      ],
    },
    workbox: {
      // WOFF for the PDF library, which cannot cut WOFF2 down; the screens use the smaller kind.
      globPatterns: ['**/*.{js,css,html,svg,png,woff,woff2,wasm,webmanifest}'],
      // The barcode reader and the solver are the largest; all of it must be there without a signal.
      maximumFileSizeToCacheInBytes: 6 * 1024 * 1024,
      navigateFallback: '/index.html',
      // The page that is open when the program first arrives is its own from then on.
      clientsClaim: true,
      cleanupOutdatedCaches: true,
      // Calls are never answered from a cache, which would lie in clear on the disk.
      runtimeCaching: [],
    },
  });
