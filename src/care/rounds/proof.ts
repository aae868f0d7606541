import type { Fact } from '../catalogue.ts';
import { agreementOf } from '../custody/agreement.ts';
import type { Home } from '../home.ts';
import { isWithdrawn } from '../quality/held.ts';
import { outcomeOf, registrationOf } from '../results/outcome.ts';
import type { Story } from './story.ts';

/** What ties a result to a person, link by link: each rests on the one before it. */
export const linkNames = ['person', 'kit', 'labels', 'reference', 'result', 'doubts'] as const;
export type LinkName = (typeof linkNames)[number];

export interface Link {
  readonly link: LinkName;
  /** `yes` holds; `no` does not, or is in doubt; `not-yet` is still to come; `over` never will. */
  readonly holds: 'yes' | 'no' | 'not-yet' | 'over';
  /** The facts it rests on. */
  readonly facts: readonly Fact[];
}

/** How we know that a result is this person's: six links, and whether each of them holds. */
export function proofOf(home: Home, story: Story): Link[] {
  const links = [person(story), kit(story), labels(home, story), reference(home, story)];
  return [...links, result(home, story), doubts(story)];
}

function person({ turn }: Story): Link {
  const { identity } = turn;
  if (identity === undefined)
    return { link: 'person', holds: turn.paper === undefined ? 'not-yet' : 'over', facts: [] };
  const holds = identity.data.chosen === turn.person ? 'yes' : 'no';
  return { link: 'person', holds, facts: [identity] };
}

/** A kit belongs to the turn in which it was opened, and to no other, unless it was closed for ever. */
function kit({ test }: Story): Link {
  const { opened, spoiled } = test;
  if (opened === undefined) return { link: 'kit', holds: 'not-yet', facts: [] };
  return spoiled === undefined
    ? { link: 'kit', holds: 'yes', facts: [opened] }
    : { link: 'kit', holds: 'over', facts: [opened, spoiled] };
}

function labels(home: Home, { test }: Story): Link {
  const { agrees } = agreementOf(home, test.id);
  const facts = [...(test.opened === undefined ? [] : [test.opened]), ...test.labels];
  return { link: 'labels', holds: agrees, facts: [...facts, ...test.packed] };
}

function reference(home: Home, { test }: Story): Link {
  const { registered, failures } = registrationOf(home, test.id);
  if (registered !== undefined) return { link: 'reference', holds: 'yes', facts: [registered] };
  const last = failures.at(-1);
  const over = test.spoiled !== undefined || isWithdrawn(home, test.id);
  return {
    link: 'reference',
    holds: over ? 'over' : last === undefined ? 'not-yet' : 'no',
    facts: last === undefined ? [] : [last],
  };
}

function result(home: Home, { test }: Story): Link {
  const outcome = outcomeOf(home, test.id);
  switch (outcome.state) {
    case 'waiting':
      return {
        link: 'result',
        holds: test.spoiled === undefined ? 'not-yet' : 'over',
        facts: [],
      };
    case 'withdrawn':
      return { link: 'result', holds: 'over', facts: [] };
    case 'held':
      return { link: 'result', holds: 'no', facts: outcome.results };
    case 'known': {
      const { result: known } = outcome;
      // The laboratory took it back: whatever else agrees, it is nobody's result now.
      if (known.data.outcome === 'withdrawn')
        return { link: 'result', holds: 'over', facts: [known] };
      return {
        link: 'result',
        holds: known.data.matched === 'none' ? 'no' : 'yes',
        facts: [known],
      };
    }
  }
}

/** Nothing on record speaks against it, or a named person has settled all that did. */
function doubts({ findings, settlements }: Story): Link {
  const open = findings.some(({ standing }) => standing.state !== 'settled');
  return { link: 'doubts', holds: open ? 'no' : 'yes', facts: settlements };
}
