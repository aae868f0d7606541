import type { Fact } from '../catalogue.ts';

/**
 * The facts of one turn in the order they were done. One tablet counts its own facts; a turn moves
 * to another tablet only by `turn.resumed`, which names the last fact seen. So no two clocks are
 * ever compared: time only breaks ties that no reference decides.
 */
export function inTurnOrder(facts: readonly Fact[]): Fact[] {
  const waitsFor = new Map(facts.map((fact) => [fact.id, predecessors(fact, facts)]));
  const done = new Set<string>();
  const order: Fact[] = [];
  const left = [...facts];
  while (left.length > 0) {
    const ready = left.findIndex((fact) =>
      (waitsFor.get(fact.id) ?? []).every((id) => done.has(id)),
    );
    // A reference in a circle cannot be made by this program; if it is, fall back to time.
    const [next] = left.splice(Math.max(ready, 0), 1);
    if (next === undefined) break;
    done.add(next.id);
    order.push(next);
  }
  return order;
}

/** The fact before it on the same tablet, and the one it says it follows. */
function predecessors(fact: Fact, facts: readonly Fact[]): string[] {
  const earlier = facts.filter((other) => other.device === fact.device && other.seq < fact.seq);
  const last = earlier.reduce<Fact | undefined>(
    (best, other) => (best === undefined || other.seq > best.seq ? other : best),
    undefined,
  );
  const named = fact.kind === 'turn.resumed' && facts.some(({ id }) => id === fact.data.after);
  return [...(last ? [last.id] : []), ...(named ? [fact.data.after] : [])];
}
