import type { WallSpan, Weekly } from '../../care/usual-times.ts';
import type { AllWords } from '../words/en-all.ts';

export interface UsualTimes {
  readonly windows: readonly WallSpan[];
  readonly out: readonly Weekly[];
}

/** When a person is usually seen and out, in a line or two. */
export const sayTimes = ({ windows, out }: UsualTimes, { usual }: AllWords): string =>
  [
    windows.length === 0 ? usual.anyTime : usual.seen(windows),
    ...out.map(({ weekdays, ...when }) => usual.out(weekdays, when)),
  ].join(' ');

/** A colleague's usual hours and breaks, in a line or two. */
export const sayHours = (
  { hours, away }: { readonly hours: readonly Weekly[]; readonly away: readonly WallSpan[] },
  { usual }: AllWords,
): string =>
  [
    ...(hours.length === 0 ? [usual.noHours] : []),
    ...hours.map(({ weekdays, ...when }) => usual.here(weekdays, when)),
    ...(away.length > 0 ? [usual.breaks(away)] : []),
  ].join(' ');
