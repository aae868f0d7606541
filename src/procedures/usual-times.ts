import type { Home } from '../care/home.ts';
import type { PersonId, StaffId } from '../care/ids.ts';
import { personOf } from '../care/people/person.ts';
import { allow, refuse } from '../care/refusal.ts';
import { memberOf } from '../care/staff/member.ts';
import type { WallSpan, Weekly } from '../care/usual-times.ts';
import { isSpan } from '../care/usual-times.ts';
import { standingFor } from './describe.ts';
import type { Outcome } from './doing.ts';

const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

const firstWrong = (field: string, spans: readonly WallSpan[]) =>
  spans.some((span) => !isSpan(span))
    ? ({ reason: 'ends-before-start', field } as const)
    : undefined;

/** When a person is usually seen, and when they are usually out. Nothing is written where nothing changes. */
export function setTimes(
  home: Home,
  {
    person,
    windows,
    out,
  }: {
    readonly person: PersonId;
    readonly windows: readonly WallSpan[];
    readonly out: readonly Weekly[];
  },
): Outcome {
  const wrong = firstWrong('windows', windows) ?? firstWrong('out', out.map(spanOf));
  if (wrong) return refuse(wrong);
  if (same(personOf(home, person).times, { windows, out })) return allow([]);
  return allow([
    {
      kind: 'person.times',
      data: {
        ...{ person, windows: [...windows], out: [...out] },
        ...standingFor(home, ['person', person], { kind: 'person.times' }),
      },
    },
  ]);
}

const spanOf = ({ from, until }: WallSpan): WallSpan => ({ from, until });

/** A colleague's usual hours, with whom they do not pair: each only where it changes. */
export function setHours(
  home: Home,
  {
    staff,
    hours,
    away,
    apart,
  }: {
    readonly staff: StaffId;
    readonly hours: readonly Weekly[];
    readonly away: readonly WallSpan[];
    readonly apart: readonly StaffId[];
  },
): Outcome {
  const wrong = firstWrong('hours', hours.map(spanOf)) ?? firstWrong('away', away);
  if (wrong) return refuse(wrong);
  const now = memberOf(home, staff);
  const others = new Set([...now.apart, ...apart]);
  return allow([
    ...(same([now.hours, now.away], [hours, away])
      ? []
      : [
          {
            kind: 'staff.hours' as const,
            data: {
              ...{ staff, hours: [...hours], away: [...away] },
              ...standingFor(home, ['staff', staff], { kind: 'staff.hours' }),
            },
          },
        ]),
    ...[...others]
      .filter((other) => other !== staff && now.apart.has(other) !== apart.includes(other))
      .map((other) => ({
        kind: 'staff.apart' as const,
        data: {
          ...{ staff, other, apart: apart.includes(other) },
          ...standingFor(home, ['staff', staff], {
            kind: 'staff.apart',
            where: ({ data }) => data.staff === other || data.other === other,
          }),
        },
      })),
  ]);
}
