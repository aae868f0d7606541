import type { JSX } from 'preact';
import type { BeadName } from '../../../care/rounds/frame.ts';
import { beadNames, wireOfTest } from '../../../care/rounds/frame.ts';
import type { Story, Told } from '../../../care/rounds/story.ts';
import { useDesk } from '../../desk/desk.ts';
import { Bead } from '../../pieces/frame/bead.tsx';
import { Part } from '../../pieces/page/part.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { ToldLine } from './told-line.tsx';

/** Everything that happened, under the nine beads of the wire: also what was put right since. */
export function BeadStory({ story }: { readonly story: Story }): JSX.Element {
  const { testPage: say } = useAllWords();
  return (
    <Part title={say.story}>
      <ol class="bead-story">
        {beadNames.map((bead) => (
          <BeadPart key={bead} story={story} bead={bead} told={story.beads[bead]} />
        ))}
      </ol>
    </Part>
  );
}

interface BeadPartProps {
  readonly story: Story;
  readonly bead: BeadName;
  readonly told: readonly Told[];
}

function BeadPart({ story, bead, told }: BeadPartProps): JSX.Element {
  const { home } = useDesk();
  const words = useAllWords();
  const state = wireOfTest(home, story.test)?.beads[bead] ?? 'todo';
  return (
    <li>
      <Bead state={state} />
      <div>
        <h3>
          <span class="capital">{words.frame.steps[bead]}</span>
          <span class="unseen">: {words.frame.states[state]}</span>
        </h3>
        {told.length === 0 && <p class="soft">{words.testPage.nothingYet}</p>}
        <ol class="told">
          {told.map((each) => (
            <ToldLine key={each.fact.id} told={each} />
          ))}
        </ol>
      </div>
    </li>
  );
}
