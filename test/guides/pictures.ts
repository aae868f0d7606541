import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { people } from '../../demo/people.ts';
import { House } from '../journeys/app/house.ts';
import {
  atRound,
  identify,
  openKit,
  prepareRound,
  startTurn,
  swabFrom,
  toRound,
} from '../journeys/app/round.ts';
import type { TabletHand } from '../journeys/app/tablet-hand.ts';
import { kitCode } from '../trial/round.ts';

// Takes the pictures of the guides from the real program, with the demo home: `npm run pictures`.
const folder = join(import.meta.dirname, '..', '..', 'docs', 'guides', 'pictures');
mkdirSync(folder, { recursive: true });

const house = await House.open();
let kit = 6000;
const nextCode = () => kitCode((kit += 7));

async function picture(hand: TabletHand, name: string, whole = false): Promise<void> {
  await hand.page.evaluate(() => document.fonts.ready.then(() => undefined));
  await hand.awake();
  await hand.page.screenshot({ path: join(folder, `${name}.png`), fullPage: whole });
  console.log(name);
}

/** What one person's turn shows, step by step. */
async function turn(hand: TabletHand, called: string, code: string): Promise<void> {
  await startTurn(hand, called);
  await picture(hand, 'turn-who');
  await identify(hand, called);
  await hand.page.getByRole('button', { name: /^Yes/ }).waitFor();
  await picture(hand, 'turn-willing');
  await hand.tap(/^Yes/);
  await hand.sees('Open one kit. Scan its spare label.');
  await picture(hand, 'turn-kit');
  await openKit(hand, code);
  await picture(hand, 'turn-ready');
  await hand.tap('Throat: start');
  await hand.awake();
  await picture(hand, 'turn-throat');
  await hand.tap('Nose: start');
  await hand.tap('Out');
  await picture(hand, 'turn-lid');
  await hand.tap('Lid tight, dry');
  await hand.tap('Sealed');
  await hand.sees(`Thank ${called}.`);
  await picture(hand, 'turn-thanks');
  await hand.tap('Done. Back to the round');
  await atRound(hand);
}

try {
  const hall = await house.tablet('hall');
  await hall.changeHands('Jonah Marsh');
  await hall.restart('Jonah Marsh');
  await picture(hall, 'now');
  await hall.go('/rounds/new');
  await hall.page.getByText('Step 1 of 4').waitFor();
  await picture(hall, 'prepare-when');
  await hall.page.getByRole('button', { name: 'Next', exact: true }).click();
  await hall.page.getByText('Step 2 of 4').waitFor();
  await picture(hall, 'prepare-who');
  await hall.go('/');
  await prepareRound(hall);

  const sent = new Map<string, string>();
  for (const { called, sites } of people.slice(0, 6)) {
    const code = nextCode();
    if (sent.size === 0 && sites !== 'nose-only') await turn(hall, called, code);
    else {
      await startTurn(hall, called);
      await identify(hall, called);
      await swabFrom(hall, called, code);
      await hall.tap('Done. Back to the round');
      await atRound(hall);
    }
    sent.set(called, code);
  }
  await startTurn(hall, people[6]?.called ?? '');
  await identify(hall, people[6]?.called ?? '');
  await hall.tap(/^No /);
  await hall.tap('Back to the round');
  await atRound(hall);
  await picture(hall, 'round', true);

  await hall.go(`${hall.round}/pack`);
  await hall.sees('Scan each bag as it goes into the box.');
  for (const code of [...sent.values()].slice(0, 4)) {
    await hall.scan(code);
    await hall.page.waitForTimeout(300);
  }
  await picture(hall, 'pack');

  const office = await house.tablet('office');
  await picture(office, 'manager-now', true);
  for (const [path, heading, name] of [
    ['/results', 'Results', 'manager-results'],
    ['/people', 'People', 'manager-people'],
    ['/person/corwenvale1', 'Corwen Vale', 'manager-person'],
    ['/kits', 'Kits', 'manager-kits'],
    ['/policy', 'Policy', 'manager-policy'],
    ['/tablets', 'Tablets and PINs', 'manager-tablets'],
  ] as const) {
    await office.go(path);
    await office.page.getByRole('heading', { level: 1 }).filter({ hasText: heading }).waitFor();
    await picture(office, name);
  }
  await office.page.emulateMedia({ colorScheme: 'dark' });
  await toRound(Object.assign(office, { round: hall.round }));
  await picture(office, 'round-night');
} finally {
  await house.close();
}
