import type { JSX } from 'preact';
import { Fragment } from 'preact';
import { Part } from '../../pieces/page/part.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { CandidateLine } from './candidate-line.tsx';
import type { Candidate, Group } from './candidates.ts';
import type { StepProps } from './step-when.tsx';

const GROUPS: readonly Group[] = ['begun', 'due', 'held', 'resting', 'elsewhere', 'other'];

/** Everybody who lives here, by how they stand to this round; those due are on it unless taken off. */
export function StepWho({ prepare, problemOf }: StepProps): JSX.Element {
  const { prepare: say } = useAllWords();
  const { candidates, places } = prepare;
  const due = candidates.filter(({ group }) => group === 'due').length;
  const hints: Partial<Record<Group, string>> = { held: say.heldHint, other: say.otherHint };
  return (
    <>
      <p id="who" role="status" tabIndex={-1}>
        {say.chosen(places.length, due)}
      </p>
      {GROUPS.map((group) => {
        const those = candidates.filter((each: Candidate) => each.group === group);
        if (those.length === 0) return <Fragment key={group} />;
        return (
          <Part key={group} title={say.groups[group]}>
            {hints[group] !== undefined && <p>{hints[group]}</p>}
            <ul class="candidates">
              {those.map((each) => (
                <CandidateLine
                  key={each.person}
                  candidate={each}
                  prepare={prepare}
                  problem={problemOf(`why-${each.person}`)}
                />
              ))}
            </ul>
          </Part>
        );
      })}
    </>
  );
}
