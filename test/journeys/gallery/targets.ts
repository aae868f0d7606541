import type { Page } from 'playwright-core';

export interface Target {
  readonly name: string;
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** Everything that can be pressed now, as boxes on the page; a label counts for the box it holds. */
export async function readTargets(page: Page): Promise<readonly Target[]> {
  return page.evaluate(() => {
    const all = document.querySelectorAll<HTMLElement>(
      'a[href], button, select, textarea, input, summary',
    );
    const held = [...all].map((one) =>
      one.matches('input[type="radio"], input[type="checkbox"]')
        ? (one.closest('label') ?? one)
        : one,
    );
    return [...new Set(held)]
      .filter((one) => one.checkVisibility() && !one.classList.contains('skip-link'))
      .map((one) => {
        const { left, top, right, bottom } = one.getBoundingClientRect();
        const name = (one.getAttribute('aria-label') ?? one.textContent.trim()) || one.id;
        return { name, left, top, right, bottom };
      });
  });
}

/** The shortest way between two boxes, in px; below 0 where they lie over each other. */
export function gap(a: Target, b: Target): number {
  const across = Math.max(a.left, b.left) - Math.min(a.right, b.right);
  const down = Math.max(a.top, b.top) - Math.min(a.bottom, b.bottom);
  if (across < 0 && down < 0) return Math.max(across, down);
  return Math.hypot(Math.max(0, across), Math.max(0, down));
}

export function smallerThan(targets: readonly Target[], least: number): readonly string[] {
  return targets
    .filter((one) => one.right - one.left < least - 0.5 || one.bottom - one.top < least - 0.5)
    .map(
      (one) =>
        `${one.name}: ${Math.round(one.right - one.left)} × ${Math.round(one.bottom - one.top)}`,
    );
}

export function nearerThan(targets: readonly Target[], least: number): readonly string[] {
  return targets.flatMap((a, i) =>
    targets
      .slice(i + 1)
      .filter((b) => gap(a, b) < least - 0.5)
      .map((b) => `${a.name} and ${b.name}: ${Math.round(gap(a, b))}`),
  );
}
