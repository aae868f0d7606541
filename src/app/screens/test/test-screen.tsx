import type { JSX } from 'preact';
import { testOf } from '../../../care/custody/test.ts';
import type { TestId } from '../../../care/ids.ts';
import { testKindOf } from '../../../care/policy/in-force.ts';
import { isWithdrawn } from '../../../care/quality/held.ts';
import { actionsFor, isSettled } from '../../../care/results/actions.ts';
import { outcomeOf } from '../../../care/results/outcome.ts';
import type { Story } from '../../../care/rounds/story.ts';
import { storyOf } from '../../../care/rounds/story.ts';
import { useDesk } from '../../desk/desk.ts';
import { namesIn } from '../../desk/names.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { Part } from '../../pieces/page/part.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { EmptyPage } from '../empty-page.tsx';
import { ResultMeaning } from '../meaning/result-meaning.tsx';
import { PageHead } from '../page-head.tsx';
import { paths, to } from '../paths.ts';
import { ActionsPart } from './actions-part.tsx';
import { BeadStory } from './bead-story.tsx';
import { DoubtsPart } from './doubts-part.tsx';
import { ProofPart } from './proof-part.tsx';
import { Readings } from './readings.tsx';
import { TestWire } from './test-wire.tsx';
import { whyOf } from './why-words.ts';
import './test.css';

/** One test on one page: how we know it is theirs, and everything that happened, by whom and when. */
export function TestScreen({ test }: { readonly test: TestId }): JSX.Element {
  const { home } = useDesk();
  const words = useAllWords();
  const story = storyOf(home, test);
  if (story === undefined) {
    return (
      <EmptyPage
        title={words.testPage.none}
        action={<Button href={to(paths.results)}>{words.nav.results}</Button>}
      />
    );
  }
  return <ToldTest story={story} />;
}

function ToldTest({ story }: { readonly story: Story }): JSX.Element {
  const { home } = useDesk();
  const words = useAllWords();
  const say = words.testPage;
  const { test, turn, on, round } = story;
  const name = namesIn(home, words.refusals.somebody).person(turn.person);
  const kind = round && testKindOf(story.policy.policy, round.planned.data.test);
  const todo = actionsFor(home, test.id).some((action) => !isSettled(action));
  return (
    <div class="test-page">
      <PageHead title={test.taken === undefined ? say.turnTitle(name, on) : say.title(name, on)}>
        <p>
          {kind !== undefined && `${kind.name}. `}
          {whyOf(home, story, words)}
        </p>
      </PageHead>
      <TestWire test={test} />
      <div class="button-row">
        <Button kind="main" icon="print" href={to(paths.evidence(test.id))}>
          {say.sheet}
        </Button>
        {todo && <Button href={to(paths.act(test.id))}>{say.act}</Button>}
        <Button icon="person" href={to(paths.person(turn.person))}>
          {say.toPerson(name)}
        </Button>
        {round !== undefined && <Button href={to(paths.round(round.id))}>{say.toRound}</Button>}
      </div>
      <TestNotices story={story} />
      <ProofPart story={story} />
      <Part title={say.readings}>
        <Readings test={test.id} />
      </Part>
      <DoubtsPart story={story} />
      <ResultMeaning test={test.id} />
      <ActionsPart test={test.id} />
      <BeadStory story={story} />
    </div>
  );
}

/** What has to be known before anybody trusts this page: closed for ever, taken out, held. */
function TestNotices({ story }: { readonly story: Story }): JSX.Element {
  const { home } = useDesk();
  const words = useAllWords();
  const say = words.testPage;
  const { spoilReason } = testOf(home, story.test.id);
  const held = story.findings.some(({ standing }) => standing.state !== 'settled');
  const out =
    isWithdrawn(home, story.test.id) && outcomeOf(home, story.test.id).state === 'withdrawn';
  return (
    <>
      {spoilReason !== undefined && (
        <Notice kind="note" title={say.spoiled}>
          {say.spoiledWhy(words.turn.faults[spoilReason])}
        </Notice>
      )}
      {out && (
        <Notice kind="look" title={say.withdrawn}>
          {say.withdrawnHow}
        </Notice>
      )}
      {held && (
        <Notice kind="look" title={say.held}>
          {say.heldHow}
        </Notice>
      )}
    </>
  );
}
