import type { Kind } from '../care/catalogue.ts';
import type { Home } from '../care/home.ts';
import { factsIn, replacedBy } from '../care/home.ts';
import type { FactId, PersonId } from '../care/ids.ts';
import { allow, refuse } from '../care/refusal.ts';
import { ranks } from '../care/staff/rights.ts';
import type { Doing, Outcome } from './doing.ts';
import { wrongText } from './wrong-entry.ts';

/**
 * Entries that may be struck out. A caution is not among them: only a clinician's answer ends it.
 * Nor is anything that happened at the bedside: a clash there is settled, never struck.
 */
const STRIKABLE: ReadonlySet<Kind> = new Set<Kind>([
  'person.came',
  'person.went',
  'symptoms.noticed',
  'contact.noted',
  'preparation.agreed',
]);

export const mayStrike = (kind: Kind): boolean => STRIKABLE.has(kind);

/** An entry made by mistake, such as for the wrong person, no longer counts. It stays to be read. */
export function strikeOut(
  home: Home,
  given: { readonly person: PersonId; readonly entry: FactId; readonly reason: string },
  doing: Doing,
): Outcome {
  if (!ranks(home, doing.by, 'senior')) return refuse({ reason: 'needs-senior' });
  const facts = factsIn(home, 'person', given.person);
  const entry = facts.find((fact) => fact.id === given.entry);
  if (entry === undefined || !mayStrike(entry.kind))
    return refuse({ reason: 'may-not-strike-out' });
  if (replacedBy(facts).has(entry.id)) return refuse({ reason: 'nothing-changed' });
  const wrong = wrongText(given.reason, { field: 'reason', most: 500 });
  if (wrong !== undefined) return refuse(wrong);
  return allow([
    {
      kind: 'entry.struck-out',
      data: { person: given.person, replaces: [entry.id] },
      private: { reason: given.reason.trim() },
    },
  ]);
}
