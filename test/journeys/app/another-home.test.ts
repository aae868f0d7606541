import { randomBytes } from 'node:crypto';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import type { Running } from '../../../src/server/start/serve.ts';
import { serve } from '../../../src/server/start/serve.ts';
import { Caller } from '../../server/caller.ts';
import { TabletCopy } from '../../server/facts.ts';
import { machineFor, optionsFor } from '../../server/machine.ts';
import { kitCode } from '../../trial/round.ts';
import { backToRound, codesFrom } from './after-swab.ts';
import { House } from './house.ts';
import { identify, openKit, prepareRound, startTurn, swabFrom } from './round.ts';
import type { TabletHand } from './tablet-hand.ts';

// Two homes of one group, each with a server of its own. The tablet works in one of them; in the other
// somebody has used one of the kits that lie on the shelf here.
const folder = mkdtempSync(join(tmpdir(), 'tallyround-group-'));
const secret = ['--group-secret', join(folder, 'secret.txt')] as const;
const next = codesFrom(9300, kitCode);
const [theirs, ours] = [next(), next()];
let other: Running;
let house: House;
/** The clock of both homes: the machine's, until the house has one of its own. */
let clock = () => Date.now();
let hall: TabletHand;

const startOther = (port: number, ...peers: readonly string[]): Promise<Running> =>
  serve(
    optionsFor(join(folder, 'other'), '--port', String(port), ...secret, ...peers),
    machineFor([], { now: () => clock() }),
  );

beforeAll(async () => {
  writeFileSync(join(folder, 'secret.txt'), randomBytes(32).toString('base64url'), { mode: 0o600 });
  other = await startOther(0);
  house = await House.open(...secret, '--group-peer', other.url);
  clock = () => house.now();
  const { port } = new URL(other.url);
  await other.stop();
  other = await startOther(Number(port), '--group-peer', house.url);
  await useThere();
  hall = await house.tablet('hall');
  await hall.changeHands('Jonah Marsh');
  await prepareRound(hall);
  await hall.page.getByText('Nothing waiting').waitFor({ timeout: 60_000 });
}, 400_000);
afterAll(async () => {
  await house.close();
  await other.stop();
  rmSync(folder, { recursive: true });
});
afterEach(({ task }) => hall.picture(task));

/** A tablet of the other home opens a kit and sends it to its server. */
async function useThere(): Promise<void> {
  const caller = new Caller(other.url);
  await caller.signIn('ottoline', '402917');
  const enrolled = await caller.enrol();
  const { service } = other.parts.accounts.settings;
  const tablet = await new TabletCopy(caller, { ms: clock() }, service).begin(enrolled);
  await tablet.write('ottoline', {
    ...{ kind: 'kit.opened', v: 1 },
    data: {
      ...{ turn: 'theirturn', test: 'theirtest', code: theirs },
      ...{ how: 'scanned', kitKind: 'single-swab' },
    },
  });
  expect(await tablet.sync()).toMatchObject({ ok: true });
}

const foundThere = async () =>
  (await other.parts.ledger.store.opened(0, 1000)).filter(({ kind }) => kind === 'code.elsewhere');

describe('a kit whose code another home has used', () => {
  it('is stopped at its spare label, before anything touches anybody', async () => {
    await startTurn(hall, 'Hesper');
    await identify(hall, 'Hesper');
    await hall.tap(/^Yes/);
    await hall.sees('Open one kit. Scan its spare label.');
    await hall.scan(theirs);
    await hall.page
      .getByRole('alert')
      .getByText('This code was used in another home. Put the kit aside. Open another one.')
      .waitFor();
    // Nothing was opened: the other home’s server would have heard of it.
    expect(await foundThere()).toHaveLength(0);
  });

  it('another kit is opened, and the turn goes on', async () => {
    await openKit(hall, ours);
    await hall.page.getByRole('alert').waitFor({ state: 'detached' });
    await hall.tap('First side: start');
    await hall.tap('Other side: start');
    await hall.tap('Out');
    await hall.tap('Lid tight, dry');
    await hall.tap('Sealed');
    await backToRound(hall);
  });

  it('with no signal it is opened: nobody at a bedside waits for a network', async () => {
    await house.killServer();
    await startTurn(hall, 'Bram');
    await identify(hall, 'Bram');
    await swabFrom(hall, 'Bram', theirs);
    await backToRound(hall);
  });

  it('is found when the signal is back, in both homes, and the test is held', async () => {
    await house.startServer();
    await hall.go('/');
    const link = hall.page.getByRole('link', {
      name: 'Read it: Another home has used this code too',
    });
    await link.waitFor({ timeout: 120_000 });
    await link.click();
    await hall.sees('Held until it is settled.');
    await hall.sees(`Another home of the group has used the code ${theirs} too.`);
    await hall.sees(/Written by the program itself\./);
    await expect.poll(foundThere).toHaveLength(1);
    await hall.go(`${hall.round}/pack`);
    await hall.sees('Scan each bag as it goes into the box.');
    await hall.scan(theirs);
    await hall.sees('Something about this tube does not fit. A senior must settle it first.');
  });

  it('a senior settles it in their own name, with the reason', async () => {
    await hall.changeHands('Sorrel Wade');
    await hall.go('/');
    await hall.page
      .getByRole('link', { name: 'Read it: Another home has used this code too' })
      .click();
    await hall.page.getByRole('radio', { name: /^It is explained/ }).check();
    await hall.page.getByRole('button', { name: 'Settle it in my name' }).click();
    await hall.page.getByRole('alert').getByText('Write why. Others will read it.').waitFor();
    const reason = 'I rang them. Theirs was never swabbed; it is put aside.';
    await hall.page.getByLabel('How do you know?').fill(reason);
    await hall.page.getByRole('button', { name: 'Settle it in my name' }).click();
    await hall.sees(/Settled .* by Sorrel\./);
    await hall.go(`${hall.round}/pack`);
    await hall.sees('Scan each bag as it goes into the box.');
    await hall.scan(theirs);
    await hall.sees("Bram's bag is in the box.");
  });
});
