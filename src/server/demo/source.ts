import { type DemoAsked, type DemoHome, tinyHome } from './tiny-home.ts';

export type { DemoHome, DemoStaff } from './tiny-home.ts';

/** The one place that says where the invented home comes from. */
export const demoHome = (asked: DemoAsked): DemoHome => tinyHome(asked);
