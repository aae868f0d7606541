import type { BackupLine } from './backup.ts';
import { readEntry } from './entry.ts';
import { targetsOf } from './erased-fact.ts';
import { type Confirmed, factOf } from './fact.ts';
import { conclude } from './findings/conclude.ts';
import { evolve, initial } from './findings/envelopes.ts';
import type { Finding } from './findings/finding.ts';
import type { Hash } from './hash.ts';
import { CHAIN_START, type FactId } from './ids.ts';
import { type LedgerStore, type Mark, StorageError } from './store.ts';
import { MAX_FACTS } from './sync-message.ts';

export type Broken =
  | 'broken-link'
  | 'not-a-fact'
  | 'private-mismatch'
  | 'wrong-id'
  | 'wrong-head'
  | 'unreadable';

export interface Verdict {
  /** Exit code: 0 sound; 1 sound, but with something to explain; 2 broken. */
  readonly exit: 0 | 1 | 2;
  readonly facts: number;
  /** The last place that holds. */
  readonly reached: Mark;
  /** Where it first does not hold. */
  readonly broken?: { readonly position: number; readonly reason: Broken };
  /** Forks, gaps and orphans. */
  readonly findings: readonly Finding[];
  /** Facts whose private part is missing though nobody erased it. */
  readonly unexplained: readonly FactId[];
}

/** Counts every id, link and private hash of a log again, from its first fact. */
async function verify(
  entries: AsyncIterable<Confirmed>,
  against: { readonly hash: Hash; readonly erased: ReadonlySet<FactId>; readonly head?: Mark },
): Promise<Verdict> {
  const log = new LogCheck(against.hash);
  try {
    for await (const entry of entries) if (!log.take(entry)) break;
  } catch (error) {
    if (!(error instanceof StorageError)) throw error;
    log.fail('unreadable');
  }
  if (against.head) log.mustEndAt(against.head);
  return log.verdict(against.erased);
}

/** The same for a store, in pages. */
export function verifyStore(store: LedgerStore, hash: Hash): Promise<Verdict> {
  return Promise.all([store.head(), store.erased()]).then(([head, erased]) =>
    verify(logOf(store, head.position), { hash, erased, head }),
  );
}

async function* logOf(store: LedgerStore, position: number): AsyncGenerator<Confirmed> {
  for (let after = 0; after < position; after += MAX_FACTS)
    yield* await store.confirmed(after, Math.min(MAX_FACTS, position - after));
}

/** And for the lines of a backup. */
export async function verifyLines(lines: AsyncIterable<BackupLine>, hash: Hash): Promise<Verdict> {
  const erased = new Set<FactId>();
  let head: (Mark & { readonly private: boolean }) | undefined;
  const log = new LogCheck(hash);
  for await (const line of lines) {
    if ('head' in line) head = line.head;
    else if ('erased' in line) erased.add(line.erased);
    else if ('fact' in line && !log.take(line.fact)) break;
  }
  log.mustEndAt(head ?? { position: -1, chain: CHAIN_START });
  return log.verdict(erased, head?.private ?? true);
}

/** One walk along a log. */
class LogCheck {
  private reached: Mark = { position: 0, chain: CHAIN_START };
  private broken: Verdict['broken'];
  private readonly envelopes = initial();
  private readonly hidden: FactId[] = [];
  private readonly targets = new Set<FactId>();

  constructor(private readonly hash: Hash) {}

  take(entry: Confirmed): boolean {
    const read = readEntry(entry, this.reached, this.hash);
    if (!read.ok) return this.fail(read.reason);
    if (read.entry.id !== entry.id) return this.fail('wrong-id');
    const { body } = read;
    evolve(this.envelopes, factOf(body, { written: { id: entry.id }, size: 0, receipt: entry }));
    for (const id of targetsOf(body)) this.targets.add(id);
    if (body.private !== undefined && entry.private === undefined) this.hidden.push(entry.id);
    this.reached = { position: entry.position, chain: entry.chain };
    return true;
  }

  fail(reason: Broken): false {
    this.broken ??= { position: this.reached.position + 1, reason };
    return false;
  }

  mustEndAt({ position, chain }: Mark): void {
    if (position !== this.reached.position || chain !== this.reached.chain) this.fail('wrong-head');
  }

  verdict(erased: ReadonlySet<FactId>, withPrivate = true): Verdict {
    const found = conclude(this.envelopes).filter(({ kind }) =>
      ['fork', 'gap', 'orphan'].includes(kind),
    );
    const unexplained = withPrivate
      ? this.hidden.filter((id) => !erased.has(id) && !this.targets.has(id))
      : [];
    const { reached, broken } = this;
    const odd = found.length > 0 || unexplained.length > 0;
    const exit = broken ? 2 : odd ? 1 : 0;
    return {
      exit,
      facts: reached.position,
      reached,
      ...(broken && { broken }),
      findings: found,
      unexplained,
    };
  }
}
