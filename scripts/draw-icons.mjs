// Draws the PNG icons from the SVG ones, where a platform wants no SVG. Run it after changing them:
// node scripts/draw-icons.mjs [path to chromium]
import { readFileSync, writeFileSync } from 'node:fs';
import { chromium } from 'playwright-core';

const folder = new URL('../src/app/public/icons/', import.meta.url);
const wanted = [
  ['icon', 'icon-192', 192],
  ['icon', 'icon-512', 512],
  ['maskable', 'maskable-512', 512],
  ['maskable', 'touch', 180],
];

const browser = await chromium.launch({
  executablePath: process.argv[2] ?? '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-gpu', '--no-first-run', '--disable-background-networking'],
});
for (const [source, name, size] of wanted) {
  const page = await browser.newPage({ viewport: { width: size, height: size } });
  const svg = readFileSync(new URL(`${source}.svg`, folder), 'utf8');
  await page.setContent(`<style>body{margin:0}svg{display:block}</style>${svg}`);
  writeFileSync(new URL(`${name}.png`, folder), await page.screenshot({ omitBackground: true }));
  await page.close();
}
await browser.close();
