import { goTo, openRehearsal, scan } from './browser.ts';
import { makeRounds } from './every-page/addresses.ts';

const rehearsal = await openRehearsal();
const page = await rehearsal.open('marenholt1', '/');
await page.locator('main h1').waitFor();
await page.evaluate('globalThis.__name = (f) => f');
const made = await makeRounds(page);
const shot = async (name: string, full = false) => {
  await page.locator('main h1').first().waitFor();
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
    for (const size of [
      { width: 390, height: 844 },
      { width: 820, height: 1180 },
    ]) {
      await page.setViewportSize(size);
      await page.screenshot({
        path: `/tmp/keys-shots/${name}-${size.width}-${colorScheme}.png`,
        fullPage: full,
      });
    }
  }
};
const big = async (name: string | RegExp) => {
  const b = page.getByRole('button', { name }).first();
  await b.waitFor();
  await page.waitForTimeout(800);
  await b.click();
};
const it = (f: string) => page.evaluate(f);
await shot('now', true);
await it('rehearsal.setOpening(true)');
await shot('opening-now');
await goTo(page, `/round/${made.open}/turn/bramhollow5`);
await shot('opening-turn');
await it('rehearsal.setOpening(false)');
await big(/^Fresh gloves/);
await page.getByRole('button', { name: /None of these/ }).waitFor();
await shot('who');
await big('2 January 1970');
await page.getByRole('button', { name: /^Yes/ }).waitFor();
await shot('willing');
await big(/^Yes/);
await page.getByText('Open one kit. Scan its spare label.').waitFor();
await shot('kit');
const [code] = (await it('rehearsal.freeCodes(1)')) as string[];
await scan(page, code!);
await big(/^Fluid seen/);
await page.waitForTimeout(1200);
await scan(page, code!);
await page.waitForTimeout(1500);
await scan(page, code!);
await big('Throat: start');
await page.getByRole('button', { name: 'Nose: start' }).waitFor();
await page.waitForTimeout(3000);
await shot('dial');
await big('Nose: start');
await big('Out');
await page.getByRole('button', { name: 'Lid tight, dry' }).waitFor();
await shot('lid');
await big('Lid tight, dry');
await big('Sealed');
await page.getByText('Thank Bram.').waitFor();
await shot('settled');
await goTo(page, `/round/${made.open}`);
await shot('round', true);
await goTo(page, `/round/${made.open}/pack`);
await shot('pack', true);
await goTo(page, `/round/${made.sent}/hand-over`);
await shot('hand-over', true);
await goTo(page, `/round/${made.sent}/register`);
await shot('register', true);
await goTo(page, '/results/new');
await shot('result-1');
await scan(page, made.codes[0]!);
await page.getByRole('radio', { name: 'A birth date' }).check();
await shot('result-2');
await page.getByLabel('Birth date on the result').fill('1951-03-14');
await page.getByRole('button', { name: 'Check it' }).click();
await page.getByRole('radio', { name: /^Positive/ }).check();
await shot('result-3', true);
await page.getByRole('button', { name: 'Next', exact: true }).click();
await page.getByText('Read it back aloud.').waitFor();
await shot('result-4');
await big('Right: keep it');
await page.getByRole('heading', { level: 1, name: /^Cor: Positive/ }).waitFor();
await shot('act', true);
await goTo(page, '/results');
await shot('results', true);
await rehearsal.close();
