import type { Locator, Page } from 'playwright-core';

/** Goes to a thing by Tab alone, as somebody without a pointer does. */
export async function tabTo(page: Page, target: Locator): Promise<void> {
  for (let step = 0; step < 200; step += 1) {
    const where = await target.evaluate((element) => {
      const active = document.activeElement;
      if (element === active) return 'here';
      const group =
        (element as HTMLElement).tabIndex < 0 ? element.parentElement?.parentElement : null;
      return group?.contains(active) === true ? 'beside' : 'elsewhere';
    });
    if (where === 'here') return;
    // Choices that belong together are one stop; the arrows move within them.
    await page.keyboard.press(where === 'beside' ? 'ArrowDown' : 'Tab');
  }
  throw new Error(`Tab never reached ${String(target)}`);
}
