import type { Fact } from '../catalogue.ts';
import type { Home } from '../home.ts';
import { factsIn, replacedBy } from '../home.ts';
import type { Shelf } from '../kind.ts';
import { takesBack } from '../people/helpers.ts';
import type { Role } from '../staff/facts.ts';
import { everRanked } from '../staff/rights.ts';
import { endsHold } from './corrections.ts';
import type { Finding } from './finding.ts';
import { finding } from './finding.ts';

/** Which field of a record a fact sets; undefined where two may stand side by side. */
function fieldOf(fact: Fact, shelf: Shelf): string | undefined {
  switch (fact.kind) {
    case 'person.described':
    case 'staff.described':
    case 'support.described':
      return `${fact.kind}.${fact.data.about}`;
    case 'person.placed':
    case 'person.times':
    case 'person.helpers':
    case 'staff.hours':
    case 'staff.role':
    case 'support.ways':
    case 'support.reviewed':
    case 'practice.asked':
      return fact.kind;
    case 'sharing.agreed':
      return `${fact.kind}.${fact.data.reader}`;
    case 'round.planned':
    case 'round.listed':
      // A list is filed with each person on it too; there several may stand.
      return shelf === 'round' ? fact.kind : undefined;
    case 'policy.confirmed':
      return `${fact.kind}.${fact.data.from}`;
    case 'consent.decided':
      return `${fact.kind}.${fact.data.test}.${fact.data.from}`;
    case 'upload.set':
      return `${fact.kind}.${fact.data.test}`;
    case 'caution.answered':
      return `${fact.kind}.${fact.data.caution}`;
    default:
      return undefined;
  }
}

/** Two edits of one field that neither knew of the other. The cautious or the later one is shown. */
export function editedTwice(home: Home, shelf: Shelf, key: string): Finding[] {
  const facts = factsIn(home, shelf, key);
  const replaced = replacedBy(facts);
  const fields = new Map<string, Fact[]>();
  for (const fact of facts) {
    if (replaced.has(fact.id)) continue;
    const field = fieldOf(fact, shelf);
    if (field !== undefined) fields.set(field, [...(fields.get(field) ?? []), fact]);
  }
  return [...fields]
    .filter(([, edits]) => edits.length > 1 && !agreed(edits))
    .map(([field, edits]) =>
      finding('edited-twice', `${key}/${field}`, { members: edits.map(({ id }) => id) }),
    );
}

/** Two managers who confirmed the same text from the same day say one thing. */
const agreed = (edits: readonly Fact[]): boolean =>
  new Set(edits.map((fact) => (fact.kind === 'policy.confirmed' ? fact.data.digest : fact.id)))
    .size === 1;

/** Which role a decision needs. A physical act needs none: it happened. */
export function roleNeeded(home: Home, fact: Fact): Role | undefined {
  switch (fact.kind) {
    case 'person.helpers':
      return takesBack(home, fact) ? 'senior' : undefined;
    case 'settled':
    case 'caution.answered':
    case 'lot.recalled':
    case 'consent.decided':
    case 'decision.looked-at':
    case 'sharing.agreed':
    case 'home.tested-on':
    case 'home.called-off':
    case 'upload.set':
    case 'report.settled':
    case 'entry.struck-out':
      return 'senior';
    case 'result.recorded':
      return endsHold(home, fact) ? 'senior' : undefined;
    case 'policy.confirmed':
    case 'policy.written':
    case 'staff.role':
    case 'staff.left':
    case 'staff.returned':
      return 'manager';
    default:
      return undefined;
  }
}

/** A decision by somebody who had no right to it waits for one who has. */
export function withoutRight(home: Home, fact: Fact): Finding[] {
  const needed = roleNeeded(home, fact);
  if (needed === undefined || fact.device.startsWith('S')) return [];
  if (everRanked(home, fact.by, needed)) return [];
  const tests = fact.kind === 'result.recorded' ? [fact.data.test ?? []].flat() : [];
  return [finding('without-right', fact.id, { members: [fact.id], tests })];
}
