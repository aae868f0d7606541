import { testOf } from '../custody/test.ts';
import type { Home } from '../home.ts';
import { factsIn, standing } from '../home.ts';
import type { TestId } from '../ids.ts';
import type { Finding } from './finding.ts';
import { finding } from './finding.ts';

/** What can be wrong with one test by itself: its labels, its boxes, its registrations. */
export function findingsOfTest(home: Home, id: TestId): Finding[] {
  const facts = factsIn(home, 'test', id);
  const test = testOf(home, id);
  const found: Finding[] = [];
  if (test.codes.length > 1 && test.spoiled === undefined) {
    const read = [...standing(facts, 'kit.opened'), ...test.labels];
    const codes = new Set(read.map(({ data }) => data.code));
    // A bag packed by a code that was read before says nothing new: what was settled stays settled.
    const members = [...read, ...test.packed.filter(({ data }) => !codes.has(data.code))];
    found.push(finding('labels-differ', id, { members: ids(members), tests: [id] }));
  }
  if (new Set(test.packed.map(({ data }) => data.box)).size > 1) {
    found.push(finding('packed-twice', id, { members: ids(test.packed), tests: [id] }));
  }
  if (test.spoiled !== undefined && test.packed.length > 0) {
    const members = ids([test.spoiled, ...test.packed]);
    found.push(finding('packed-though-spoiled', id, { members, tests: [id] }));
  }
  const registered = standing(facts, 'test.registered');
  if (new Set(registered.map(({ data }) => data.reference)).size > 1) {
    found.push(finding('registered-twice', id, { members: ids(registered), tests: [id] }));
  }
  return found;
}

/** One reference given back for two tests. */
export function findingsOfReference(home: Home, reference: string): Finding[] {
  const registered = standing(factsIn(home, 'reference', reference), 'test.registered').filter(
    (fact) => standing(factsIn(home, 'test', fact.data.test), 'test.registered').includes(fact),
  );
  const tests = [...new Set(registered.map(({ data }) => data.test))].sort();
  if (tests.length < 2) return [];
  return [finding('reference-on-two', reference, { members: ids(registered), tests })];
}

const ids = <T>(facts: readonly { readonly id: T }[]): T[] => facts.map((fact) => fact.id);
