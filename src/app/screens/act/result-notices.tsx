import type { JSX } from 'preact';
import { personOf } from '../../../care/people/person.ts';
import { policyOn } from '../../../care/policy/in-force.ts';
import type { Recorded } from '../../../care/results/outcome.ts';
import type { Story } from '../../../care/rounds/story.ts';
import { addDays, dayOf } from '../../../care/time.ts';
import { useDesk } from '../../desk/desk.ts';
import { namesIn } from '../../desk/names.ts';
import { Notice } from '../../pieces/list/notice.tsx';
import { useAllWords } from '../../words/use-all-words.ts';

interface ResultNoticesProps {
  readonly story: Story;
  readonly result: Recorded;
}

/** What has to be known before anybody acts: they died or moved, the result changed, isolation from and to. */
export function ResultNotices({ story, result }: ResultNoticesProps): JSX.Element {
  return (
    <>
      <Gone story={story} />
      <Changed story={story} result={result} />
      {result.data.outcome === 'positive' && <Isolation story={story} result={result} />}
    </>
  );
}

function Gone({ story }: { readonly story: Story }): JSX.Element | null {
  const { home } = useDesk();
  const { acting: say } = useAllWords();
  const person = personOf(home, story.turn.person);
  const { whereabouts } = person;
  if (whereabouts.where !== 'left') return null;
  const { to, since } = whereabouts;
  return to === 'died' ? (
    <Notice kind="stop" title={say.died(person.called, since)}>
      {say.diedHow}
    </Notice>
  ) : (
    <Notice kind="look" title={say.moved(person.called, since)}>
      {say.movedHow}
    </Notice>
  );
}

/** Both versions can be read: the one that stands, and the one it stands in for. */
function Changed({ story, result }: ResultNoticesProps): JSX.Element | null {
  const { home } = useDesk();
  const words = useAllWords();
  const say = words.acting;
  const names = namesIn(home, words.refusals.somebody);
  const old = story.beads.result.flatMap(({ fact, replaced }) =>
    fact.kind === 'result.recorded' && replaced && fact.id !== result.id ? [fact] : [],
  );
  const last = old.at(-1);
  if (last === undefined) return null;
  const outcome = words.results.picks[last.data.outcome].toLowerCase();
  return (
    <Notice kind="look" title={say.changed}>
      {say.changedFrom(outcome, last.at, names.staff(last.by))} {say.changedHow}
    </Notice>
  );
}

function Isolation({ story, result }: ResultNoticesProps): JSX.Element {
  const { home } = useDesk();
  const { acting: say } = useAllWords();
  const { policy } = policyOn(home, dayOf(result.at, home.service.zone));
  const { value, source } = policy.isolationDays;
  return (
    <Notice kind="note" title={say.isolation(story.on, addDays(story.on, value))}>
      {say.isolationWhy(source)} {say.teamDecides}
    </Notice>
  );
}
