// How much our camera pipeline adds to the reader itself, in the same browser and run.
// npx tsx bench/browser/decode.ts
import { scene, symbol } from '../../test/journeys/camera/film.ts';
import { openStudio } from '../../test/journeys/camera/open-camera.ts';

interface Times {
  readonly bare: readonly number[];
  readonly plain: readonly number[];
  readonly bareFrame: readonly number[];
  readonly ours: readonly number[];
  readonly found: number;
}

const KIT = 'WSK56045137';
const scenes = {
  'Code 128': scene([await symbol('code128', KIT)]),
  'Data Matrix': scene([await symbol('datamatrix', KIT, { scale: 8 })]),
  'an empty table': scene([]),
};

const median = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[values.length >> 1] ?? NaN;
const ms = (value: number): string => value.toFixed(1).padStart(6);

const studio = await openStudio();
console.log(
  'Median ms for a 1280 × 720 picture, 40 rounds each, taken in turn. "Added" compares ours',
);
console.log('with the plainest use of the reader: take the picture, read it, in the page itself.');
console.log(
  'scene            reader   picture + reader   reader, frame only   ours end to end   added   read',
);
for (const [name, picture] of Object.entries(scenes)) {
  const { page, close } = await studio.film([picture], '', 'camera-bench');
  const text = page.locator('#times', { hasText: '{' });
  const times = JSON.parse((await text.textContent({ timeout: 120_000 })) ?? '') as Times;
  await close();
  const [bare, plain, frame, ours] = [times.bare, times.plain, times.bareFrame, times.ours].map(
    median,
  ) as [number, number, number, number];
  const added = (100 * (ours - plain)) / plain;
  console.log(
    `${name.padEnd(16)} ${ms(bare)}   ${ms(plain)}             ${ms(frame)}               ${ms(ours)}           ${added.toFixed(0).padStart(4)} %   ${String(times.found)}`,
  );
}
await studio.close();
