import type { Page } from 'playwright-core';

const week = [
  ...['Monday', 'Tuesday', 'Wednesday', 'Thursday'],
  ...['Friday', 'Saturday', 'Sunday'],
] as const;

interface Times {
  readonly from: string;
  readonly until: string;
}

/** A colleague's hours on the form that is open: one shift on every day, with one break. */
export async function fillHours(page: Page, shift: Times, pause: Times): Promise<void> {
  for (const day of week) await page.getByLabel(day).check();
  await page.getByLabel('Shift from').fill(shift.from);
  await page.getByLabel('Shift until').fill(shift.until);
  await page.getByRole('button', { name: 'Add: break', exact: true }).click();
  await page.getByLabel('Break 1: from').fill(pause.from);
  await page.getByLabel('Break 1: until').fill(pause.until);
}
