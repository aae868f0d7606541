import { appendOwn, type OwnAppended, type ServerWriter } from './append-own.ts';
import { ERASED, ERASED_VERSION, MAX_TARGETS } from './erased-fact.ts';
import type { FactId } from './ids.ts';
import type { LedgerServer } from './sync-answer.ts';

/**
 * Takes the private parts of facts away, for ever and everywhere: here now, on each tablet when it
 * next hears from the server. Bodies stay, so every chain still verifies. Rights, retention and
 * legal hold are the caller's to judge. `reason` is a closed word.
 */
export function erase(
  server: LedgerServer,
  request: { readonly targets: readonly FactId[]; readonly reason: string },
  writer: ServerWriter,
): Promise<OwnAppended> {
  const drafts = [];
  for (let from = 0; from < request.targets.length; from += MAX_TARGETS) {
    const targets = request.targets.slice(from, from + MAX_TARGETS);
    drafts.push({ kind: ERASED, v: ERASED_VERSION, data: { targets, reason: request.reason } });
  }
  return appendOwn(server, drafts, writer);
}

/**
 * What the memory outside all backups has and this ledger has forgotten, erased again. To be run
 * whenever a server starts: a copy put back over the file is then found out before anyone reads it.
 */
export async function eraseForgotten(
  server: LedgerServer,
  remembered: readonly FactId[],
  writer: ServerWriter,
): Promise<OwnAppended> {
  const known = await server.store.erased();
  const targets = [...new Set(remembered)].filter((id) => !known.has(id));
  if (targets.length === 0) return { ok: true, entries: [] };
  return erase(server, { targets, reason: 'remembered' }, writer);
}
