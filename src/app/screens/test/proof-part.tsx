import type { JSX } from 'preact';
import type { Link } from '../../../care/rounds/proof.ts';
import { proofOf } from '../../../care/rounds/proof.ts';
import type { Story } from '../../../care/rounds/story.ts';
import { useDesk } from '../../desk/desk.ts';
import { tellFact } from '../../desk/tell/tell-fact.ts';
import { Bead } from '../../pieces/frame/bead.tsx';
import type { BeadState } from '../../pieces/frame/bead-state.ts';
import { Part } from '../../pieces/page/part.tsx';
import type { Words } from '../../words/en.ts';
import { useWords } from '../../words/use-words.ts';
import { useSigned } from './use-signed.ts';

/** How do we know that this result is hers? Six links, each with the facts that it rests on. */
export function ProofPart({ story }: { readonly story: Story }): JSX.Element {
  const { home } = useDesk();
  const words = useWords();
  const say = words.testPage;
  const links = proofOf(home, story);
  const { settlements } = story;
  return (
    <Part title={say.known}>
      <p role="status">
        <b>{verdict(links, words)}</b>
        {settlements.length > 0 && ` ${say.settledAll(story.findings.length)}`}
      </p>
      <ol class="proof">
        {links.map((link) => (
          <ProofLine key={link.link} link={link} />
        ))}
      </ol>
    </Part>
  );
}

const states: Readonly<Record<Link['holds'], BeadState>> = {
  yes: 'done',
  no: 'look',
  'not-yet': 'todo',
  over: 'unneeded',
};

function ProofLine({ link: { link, holds, facts } }: { readonly link: Link }): JSX.Element {
  const { home } = useDesk();
  const words = useWords();
  const signed = useSigned();
  // The labels have a table of their own below, and what did not fit a part of its own.
  const told = link === 'labels' || link === 'doubts' ? [] : facts;
  return (
    <li data-holds={holds}>
      <Bead state={states[holds]} />
      <div>
        <p>
          <span class="unseen">{words.frame.states[states[holds]]}: </span>
          <b>{words.testPage.links[link][holds]}</b>
        </p>
        {told.map((fact) => (
          <p key={fact.id} class="soft">
            {tellFact(fact, { home, words })} {signed(fact)}
          </p>
        ))}
      </div>
    </li>
  );
}

export function verdict(links: readonly Link[], { testPage: say }: Words): string {
  const nobodySaidWho = links.some(({ link, holds }) => link === 'person' && holds === 'over');
  if (nobodySaidWho || links.some(({ holds }) => holds === 'no')) return say.notAllHold;
  return links.every(({ holds }) => holds === 'yes') ? say.allHold : say.allHoldSoFar;
}
