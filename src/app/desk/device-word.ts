import type { AllWords } from '../words/en-all.ts';
import type { Desk } from './desk.ts';

/** Which tablet a fact was written on, as staff would say it. The service's own device begins with S. */
export function deviceWord(device: string, desk: Desk, { facts }: AllWords): string {
  if (device === desk.device) return facts.thisTablet;
  return device.startsWith('S') ? facts.service : facts.tablet(device);
}
