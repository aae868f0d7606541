import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { TestId } from '../../../care/ids.ts';
import { personOf } from '../../../care/people/person.ts';
import type { Action } from '../../../care/results/actions.ts';
import { actionsFor, isSettled } from '../../../care/results/actions.ts';
import type { ActionKind } from '../../../care/results/facts.ts';
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
import { TestWire } from '../test/test-wire.tsx';
import type { ActionForm } from './action-line.tsx';
import { ActionLine } from './action-line.tsx';
import { AfterPositive, RingNow } from './after-positive.tsx';
import { ResultNotices } from './result-notices.tsx';
import './act.css';

/** What a result asks for: each thing with a role, a time and a name, until it is done or not needed. */
export function ActScreen({ test }: { readonly test: TestId }): JSX.Element {
  const { home } = useDesk();
  const words = useAllWords();
  const story = storyOf(home, test);
  if (story === undefined) return <EmptyPage title={words.refusals.unknownPerson} />;
  const outcome = outcomeOf(home, test);
  if (outcome.state !== 'known' && actionsFor(home, test).length > 0)
    return <TakenOut story={story} />;
  if (outcome.state !== 'known') {
    const title = words.acting[outcome.state];
    const action = <Button href={to(paths.test(test))}>{words.acting.toTest}</Button>;
    return <EmptyPage title={title} action={action} />;
  }
  return <KnownResult story={story} />;
}

function KnownResult({ story }: { readonly story: Story }): JSX.Element | null {
  const { home } = useDesk();
  const words = useAllWords();
  const say = words.acting;
  const { test, turn, on } = story;
  const outcome = outcomeOf(home, test.id);
  if (outcome.state !== 'known') return null;
  const { result } = outcome;
  const here = personOf(home, turn.person).whereabouts.where !== 'left';
  const names = namesIn(home, words.refusals.somebody);
  const picked = words.results.picks[result.data.outcome];
  return (
    <>
      <PageHead title={say.title(names.person(turn.person), picked)}>
        <p>
          {say.swabbed(on, result.data.reported)} {say.entered(names.staff(result.by), result.at)}
        </p>
      </PageHead>
      <TestWire test={test} />
      <RingNow story={story} />
      <ResultNotices story={story} result={result} />
      <TodoPart test={test.id} />
      <AfterPositive story={story} />
      <ResultMeaning test={test.id} />
      {result.data.outcome !== 'negative' && here && <Notice kind="note" title={say.caution} />}
    </>
  );
}

/** No result stands, and something was done on the one that did: each is looked at again. */
function TakenOut({ story }: { readonly story: Story }): JSX.Element {
  const { home } = useDesk();
  const words = useAllWords();
  const say = words.acting;
  const names = namesIn(home, words.refusals.somebody);
  const { test, turn } = story;
  return (
    <>
      <PageHead title={say.title(names.person(turn.person), words.record.outcome.withdrawn)} />
      <TestWire test={test} />
      <Notice kind="look" title={say.takenOut}>
        {say.changedHow}
      </Notice>
      <TodoPart test={test.id} />
    </>
  );
}

function TodoPart({ test }: { readonly test: TestId }): JSX.Element {
  const { home } = useDesk();
  const { acting: say } = useAllWords();
  const [open, setOpen] = useState<{ kind: ActionKind; form: ActionForm } | undefined>(undefined);
  const actions = actionsFor(home, test);
  const left = actions.filter((action) => !isSettled(action)).length;
  return (
    <Part
      title={say.todo}
      action={
        <Button icon="note" href={to(paths.test(test))}>
          {say.story}
        </Button>
      }
    >
      <p role="status">{left === 0 ? say.allDone : say.left(left)}</p>
      <ul class="actions">
        {actions.toSorted(reopenedFirst).map((action) => (
          <ActionLine
            key={action.kind}
            action={action}
            form={open?.kind === action.kind ? open.form : undefined}
            onForm={(form) => setOpen(form && { kind: action.kind, form })}
          />
        ))}
      </ul>
    </Part>
  );
}

/** What has to be undone comes before what is new. */
const reopenedFirst = (a: Action, b: Action): number => rank(a) - rank(b);
const rank = (action: Action): number =>
  isSettled(action) ? 2 : action.before === undefined ? 1 : 0;
