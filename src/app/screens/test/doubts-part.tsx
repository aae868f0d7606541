import type { JSX } from 'preact';
import type { Story } from '../../../care/rounds/story.ts';
import { useDesk } from '../../desk/desk.ts';
import { tellFact } from '../../desk/tell/tell-fact.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Bead } from '../../pieces/frame/bead.tsx';
import { Part } from '../../pieces/page/part.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { paths, to } from '../paths.ts';
import { useSigned } from './use-signed.ts';

/** What did not fit about this test, and how each was settled, by whom and why. */
export function DoubtsPart({ story }: { readonly story: Story }): JSX.Element | null {
  const { home } = useDesk();
  const words = useAllWords();
  const signed = useSigned();
  const say = words.testPage;
  if (story.findings.length === 0) return null;
  return (
    <Part title={say.doubts}>
      <ul class="proof">
        {story.findings.map(({ finding, standing }) => {
          const what = words.now.findings[finding.kind];
          const state = standing.state === 'settled' ? 'done' : 'look';
          return (
            <li key={finding.id}>
              <Bead state={state} />
              <div>
                <p>
                  <b>{what}</b>: {words.now.findingStates[standing.state]}.
                </p>
                {story.settlements
                  .filter(({ data }) => data.finding === finding.id)
                  .map((fact) => (
                    <p key={fact.id} class="soft">
                      {tellFact(fact, { home, words })} {signed(fact)}
                    </p>
                  ))}
              </div>
              <Button
                kind={state === 'look' ? 'plain' : 'quiet'}
                href={to(paths.finding(finding.id))}
                label={say.openFindingWhat(what)}
              >
                {say.openFinding}
              </Button>
            </li>
          );
        })}
      </ul>
    </Part>
  );
}
