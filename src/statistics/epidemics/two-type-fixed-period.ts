import { binomialPmf } from '../distributions/binomial.ts';
import type { TwoTypeQuestion } from './two-type-question.ts';

/**
 * The joint law for a fixed infectious period: each infective infects binomial numbers of residents
 * and of staff. Infectives are handled one at a time, waiting residents first; an infective takes
 * its residents in one step and its staff in the next.
 * State: susceptible residents r and staff s, waiting residents v and staff w.
 */
export function fixedPeriodLaw(question: TwoTypeQuestion): Float64Array {
  const { residents: m, staff: n } = question;
  const chain = makeChain(question);
  const joint = new Float64Array((m + 1) * (n + 1));
  for (let r = m; r >= 0; r--) {
    for (let s = n; s >= 0; s--) {
      for (let v = chain.high(r) - 1; v >= 0; v--) {
        for (let w = chain.wide(s) - 1; w >= 0; w--) visit(chain, { r, s, v, w });
      }
      joint[r * (n + 1) + s] = chain.whole[chain.at({ r, s, v: 0, w: 0 })] as number;
    }
  }
  return joint;
}

interface State {
  readonly r: number;
  readonly s: number;
  readonly v: number;
  readonly w: number;
}

interface Chain {
  readonly high: (r: number) => number;
  readonly wide: (s: number) => number;
  readonly at: (state: State) => number;
  /** Chances of states between infectives, and of infectives that have taken their residents. */
  readonly whole: Float64Array;
  readonly halfResident: Float64Array;
  readonly halfStaff: Float64Array;
  /** Binomial rows, by susceptibles: from residents or staff, to residents or staff. */
  readonly rows: Readonly<Record<'rr' | 'rs' | 'sr' | 'ss', readonly Float64Array[]>>;
}

function makeChain({
  residents: m,
  staff: n,
  introductions,
  rates,
  period,
}: TwoTypeQuestion): Chain {
  const high = (r: number): number => m - r + introductions.residents + 1;
  const wide = (s: number): number => n - s + introductions.staff + 1;
  const offsets: number[] = [];
  let size = 0;
  for (let r = 0; r <= m; r++) {
    for (let s = 0; s <= n; s++) {
      offsets.push(size);
      size += high(r) * wide(s);
    }
  }
  const at = ({ r, s, v, w }: State): number =>
    (offsets[r * (n + 1) + s] as number) + v * wide(s) + w;
  const rowsFor = (rate: number, most: number): readonly Float64Array[] => {
    const p = -Math.expm1(-rate * period.mean);
    return Array.from({ length: most + 1 }, (_, s) =>
      Float64Array.from({ length: s + 1 }, (__, k) => binomialPmf(k, s, p)),
    );
  };
  const whole = new Float64Array(size);
  whole[at({ r: m, s: n, v: introductions.residents, w: introductions.staff })] = 1;
  return {
    high,
    wide,
    at,
    whole,
    halfResident: new Float64Array(size),
    halfStaff: new Float64Array(size),
    rows: {
      rr: rowsFor(rates.residentToResident, m),
      rs: rowsFor(rates.residentToStaff, n),
      sr: rowsFor(rates.staffToResident, m),
      ss: rowsFor(rates.staffToStaff, n),
    },
  };
}

function visit(chain: Chain, state: State): void {
  takeStaff(chain, state, chain.halfResident, chain.rows.rs);
  takeStaff(chain, state, chain.halfStaff, chain.rows.ss);
  if (state.v > 0)
    takeResidents(chain, { ...state, v: state.v - 1 }, chain.rows.rr, {
      from: state,
      half: chain.halfResident,
    });
  else if (state.w > 0)
    takeResidents(chain, { ...state, w: state.w - 1 }, chain.rows.sr, {
      from: state,
      half: chain.halfStaff,
    });
}

function takeStaff(
  chain: Chain,
  { r, s, v, w }: State,
  half: Float64Array,
  rows: readonly Float64Array[],
): void {
  const p = half[chain.at({ r, s, v, w })] as number;
  if (p === 0) return;
  const row = rows[s] as Float64Array;
  for (let k = 0; k <= s; k++) {
    const to = chain.at({ r, s: s - k, v, w: w + k });
    chain.whole[to] = (chain.whole[to] as number) + p * (row[k] as number);
  }
}

function takeResidents(
  chain: Chain,
  { r, s, v, w }: State,
  rows: readonly Float64Array[],
  { from, half }: { readonly from: State; readonly half: Float64Array },
): void {
  const p = chain.whole[chain.at(from)] as number;
  if (p === 0) return;
  const row = rows[r] as Float64Array;
  for (let k = 0; k <= r; k++) {
    const to = chain.at({ r: r - k, s, v: v + k, w });
    half[to] = (half[to] as number) + p * (row[k] as number);
  }
}
