import type { JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { TestId } from '../../../care/ids.ts';
import { proofOf } from '../../../care/rounds/proof.ts';
import type { Story, Told } from '../../../care/rounds/story.ts';
import { storyOf } from '../../../care/rounds/story.ts';
import type { Verdict } from '../../../ledger/verify.ts';
import { useDesk } from '../../desk/desk.ts';
import { namesIn } from '../../desk/names.ts';
import { tellFact } from '../../desk/tell/tell-fact.ts';
import { Button } from '../../pieces/form/button.tsx';
import { PrintSheet } from '../../pieces/print/print-sheet.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { EmptyPage } from '../empty-page.tsx';
import { paths, to } from '../paths.ts';
import { PrintRow } from '../print-row.tsx';
import { ChainCheck } from './chain-check.tsx';
import { EvidenceHead } from './evidence-head.tsx';
import { EvidenceRows } from './evidence-rows.tsx';
import { verdict } from './proof-part.tsx';
import { TestWire } from './test-wire.tsx';
import { useSigned } from './use-signed.ts';
import './evidence.css';

/** One test on one sheet of paper for an inspector: what is known, all that happened, are the records whole. */
export function EvidenceScreen({ test }: { readonly test: TestId }): JSX.Element {
  const { home } = useDesk();
  const { testPage: say } = useAllWords();
  const story = storyOf(home, test);
  if (story === undefined) return <EmptyPage title={say.none} />;
  return (
    <>
      <PrintRow>
        <Button icon="back" href={to(paths.test(test))}>
          {say.evidence.back}
        </Button>
      </PrintRow>
      <Evidence story={story} />
    </>
  );
}

function Evidence({ story }: { readonly story: Story }): JSX.Element {
  const desk = useDesk();
  const words = useAllWords();
  const say = words.testPage;
  const names = namesIn(desk.home, words.refusals.somebody);
  const links = proofOf(desk.home, story);
  const checked = useVerdict(desk.verify);
  return (
    <div class="evidence">
      <PrintSheet
        service={desk.service.name}
        title={say.evidence.title}
        made={say.evidence.made(desk.now(), names.staff(desk.me))}
        foot={say.evidence.foot}
      >
        <EvidenceHead story={story} />
        <TestWire test={story.test} />
        <section>
          <h2>{say.known}</h2>
          <p>
            <b>{verdict(links, words)}</b>
          </p>
          <ol class="evidence-links">
            {links.map(({ link, holds }) => (
              <li key={link}>
                {holds === 'no' ? <b>{say.links[link][holds]}</b> : say.links[link][holds]}
              </li>
            ))}
          </ol>
        </section>
        <Doubts story={story} />
        <EvidenceRows told={inOrder(story)} />
        <ChainCheck checked={checked} waiting={waiting(story)} />
      </PrintSheet>
    </div>
  );

  function waiting(told: Story): number {
    return inOrder(told).filter(({ fact }) => desk.reached(fact) === undefined).length;
  }
}

/** By time, whatever bead it stands under. The dials are left out: the swab itself says its seconds. */
function inOrder(story: Story): Told[] {
  return Object.values(story.beads)
    .flat()
    .filter(({ fact }) => fact.kind !== 'site.started' && fact.kind !== 'site.ended')
    .sort((a, b) =>
      a.fact.at < b.fact.at ? -1 : a.fact.at > b.fact.at ? 1 : a.fact.seq - b.fact.seq,
    );
}

function Doubts({ story }: { readonly story: Story }): JSX.Element | null {
  const { home } = useDesk();
  const words = useAllWords();
  const signed = useSigned();
  const say = words.testPage.evidence;
  if (story.findings.length === 0) return null;
  return (
    <section>
      <h2>{say.doubts}</h2>
      <ul class="evidence-links">
        {story.findings.map(({ finding, standing }) => (
          <li key={finding.id}>
            {words.now.findings[finding.kind]}: {words.now.findingStates[standing.state]}.{' '}
            {story.settlements
              .filter(({ data }) => data.finding === finding.id)
              .map((fact) => `${tellFact(fact, { home, words })} ${signed(fact)}`)
              .join(' ')}
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Counts the whole chain again while the sheet is read; undefined until it is done. */
function useVerdict(verify: (() => Promise<Verdict>) | undefined): Verdict | 'none' | undefined {
  const [checked, setChecked] = useState<Verdict | 'none' | undefined>(
    verify === undefined ? 'none' : undefined,
  );
  useEffect(() => {
    let here = true;
    verify?.().then(
      (done) => here && setChecked(done),
      () => here && setChecked('none'),
    );
    return () => {
      here = false;
    };
    // Once for each sheet: the desk is made anew with every fact that comes.
  }, []);
  return checked;
}
