import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { kitCode } from '../../trial/round.ts';
import { scene, symbol, y4m } from '../camera/film.ts';
import { House } from './house.ts';
import { identify, prepareRound, startTurn } from './round.ts';
import type { TabletHand } from './tablet-hand.ts';

let house: House;
let hand: TabletHand;
const folder = mkdtempSync(join(tmpdir(), 'tallyround-film-'));
const code = kitCode(5107);

/** The tablet's camera sees one label, held still. */
beforeAll(async () => {
  const film = join(folder, 'label.y4m');
  writeFileSync(film, y4m([scene([await symbol('code128', code)])]));
  house = await House.open();
  house.film = film;
  hand = await house.tablet('hall');
  await hand.changeHands('Jonah Marsh');
  await prepareRound(hand);
  // All of the program is on the tablet once its worker answers for it.
  await hand.page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await hand.page.waitForFunction(() => navigator.serviceWorker.controller !== null);
}, 400_000);
afterAll(async () => {
  await house.close();
  rmSync(folder, { recursive: true, force: true });
});
afterEach(({ task }) => hand.picture(task));

describe('the camera, with the server gone', () => {
  it('the reader and its worker are on the tablet before anybody has used them', async () => {
    const kept = await hand.page.evaluate(async () => {
      const addresses: string[] = [];
      for (const name of await caches.keys())
        for (const { url } of await (await caches.open(name)).keys()) addresses.push(url);
      return addresses;
    });
    expect(kept.some((url) => /zxing_reader.*\.wasm/.test(url))).toBe(true);
    expect(kept.some((url) => /decode-worker.*\.js/.test(url))).toBe(true);
  });

  it('reads the label of a kit at the bedside, for the first time, after a cold start', async () => {
    await hand.restart('Jonah Marsh');
    await house.killServer();
    await hand.crash();
    await hand.signIn('Jonah Marsh');
    await startTurn(hand, 'Cor');
    await identify(hand, 'Cor');
    await hand.tap(/^Yes/);
    await hand.sees('Open one kit. Scan its spare label.');
    await hand.page.getByRole('button', { name: 'Use the camera' }).click();
    await hand.page
      .getByRole('button', { name: 'Fluid seen, swab sealed, all here' })
      .waitFor({ timeout: 60_000 });
  });
});
