import type { DeviceId, FactId } from '../ids.ts';
import { arrivedAt, type Linked, linked } from './bounds.ts';
import type { Envelopes } from './envelopes.ts';
import { type Finding, finding } from './finding.ts';
import { type Envelope, envelopes, type Line, linkKey, NO_LINK } from './line.ts';

/** How far outside its bounds an `at` may lie before it is a finding. Our choice. */
export const CLOCK_TOLERANCE_MS = 2 * 60 * 1000;

/** Everything the envelopes show, sorted by id. Pure: the same facts give the same findings. */
export const conclude = (state: Envelopes): readonly Finding[] => concluder(state)();

interface Kept {
  readonly stamp: string;
  /** A fact of the line has seen a receipt that is not here (yet). */
  readonly open: boolean;
  readonly found: readonly Finding[];
}

/** The same, but lines that nothing has changed for keep their findings. */
export function concluder(state: Envelopes): () => readonly Finding[] {
  const kept = new Map<Line, Kept>();
  const stampOf = (line: Line, open: boolean) =>
    `${line.version}/${state.cuts}/${open ? state.version : ''}`;
  const lineFindings = (device: DeviceId, line: Line) => {
    const before = kept.get(line);
    if (before?.stamp === stampOf(line, before?.open ?? false)) return before.found;
    const { open, found } = concludeLine(state, device, line);
    kept.set(line, { stamp: stampOf(line, open), open, found });
    return found;
  };
  return () =>
    sorted(
      state,
      [...state.lines].flatMap((entry) => lineFindings(...entry)),
    );
}

function sorted(state: Envelopes, found: Finding[]): readonly Finding[] {
  for (const [id, why] of state.unreadable) found.push(finding('unreadable', id, [id], { why }));
  return found.sort((a, b) => (a.id < b.id ? -1 : 1));
}

function concludeLine(state: Envelopes, device: DeviceId, line: Line): Omit<Kept, 'stamp'> {
  const facts = envelopes(line);
  const links = linked(
    facts,
    facts.map(({ id }) => linkKey(id)),
    state,
  );
  const found = [
    ...forks(device, facts),
    ...gaps(device, facts),
    ...orphans(links),
    ...clocks(device, links),
    ...carried(state, device, facts),
  ];
  return {
    found,
    open: links.some(({ seenAt, fact }) => seenAt === -Infinity && fact.seen !== NO_LINK),
  };
}

/** Two facts that name one previous fact: a tablet that was put back, or copied. */
function forks(device: DeviceId, facts: readonly Envelope[]): readonly Finding[] {
  const found: Finding[] = [];
  for (let from = 0, to = 0; from < facts.length; from = to) {
    const seq = facts[from]?.seq ?? 0;
    while (facts[to]?.seq === seq) to += 1;
    if (to - from === 1) continue;
    const byPrev = new Map<number, FactId[]>();
    for (const { prev, id } of facts.slice(from, to))
      byPrev.set(prev, [...(byPrev.get(prev) ?? []), id]);
    const members = [...byPrev.values()].filter((ids) => ids.length > 1).flat();
    if (members.length > 0) found.push(finding('fork', `${device}/${seq}`, members));
  }
  return found;
}

/** Numbers that the device must have used and nobody holds. The key is the first of them. */
function gaps(device: DeviceId, facts: readonly Envelope[]): readonly Finding[] {
  const found: Finding[] = [];
  let last = 0;
  for (const { seq, id } of facts) {
    if (seq > last + 1) found.push(finding('gap', `${device}/${last + 1}`, [id]));
    last = seq;
  }
  return found;
}

/** A fact whose previous fact is not held (the first of a device names none). */
function orphans(links: readonly Linked[]): readonly Finding[] {
  return links
    .filter(({ parent, fact }) => parent === undefined && (fact.seq > 1 || fact.prev !== NO_LINK))
    .map(({ fact }) => finding('orphan', fact.id, [fact.id]));
}

/** Times that cannot be, a run of facts as one. `off` is the worst of the run. */
function clocks(device: DeviceId, links: readonly Linked[]): readonly Finding[] {
  const wrong = links.filter((link) => Math.abs(outside(link)) > CLOCK_TOLERANCE_MS);
  return runs(wrong, ({ fact }) => fact.seq).map((run) => {
    const off = run.map(outside).reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a));
    return finding(
      'clock',
      `${device}/${run[0].fact.seq}`,
      run.map(({ fact }) => fact.id),
      { off },
    );
  });
}

/** How far `at` lies outside its bounds: negative when too early. */
function outside({ fact, lower, upper }: Linked): number {
  return fact.at < lower ? fact.at - lower : Math.max(0, fact.at - upper);
}

/** Facts of one device that another delivered, a run of them as one. */
function carried(
  state: Envelopes,
  device: DeviceId,
  facts: readonly Envelope[],
): readonly Finding[] {
  const foreign = facts.filter(
    (fact) => arrivedAt(state, fact) !== Infinity && state.via[fact.position - 1] !== device,
  );
  return runs(foreign, ({ seq }) => seq).map((run) =>
    finding(
      'carried',
      `${device}/${run[0].seq}`,
      run.map(({ id }) => id),
    ),
  );
}

/** Cuts a list sorted by seq wherever a seq is left out. */
function runs<T>(
  items: readonly T[],
  seqOf: (item: T) => number,
): readonly (readonly [T, ...T[]])[] {
  const found: [T, ...T[]][] = [];
  let last = -1;
  for (const item of items) {
    const seq = seqOf(item);
    const run = found.at(-1);
    if (run && seq <= last + 1) run.push(item);
    else found.push([item]);
    last = seq;
  }
  return found;
}
