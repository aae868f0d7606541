import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { RoundStage } from '../../../care/rounds/progress.ts';
import { progressOf } from '../../../care/rounds/progress.ts';
import { rounds } from '../../../care/rounds/round.ts';
import { useDesk } from '../../desk/desk.ts';
import { Button } from '../../pieces/form/button.tsx';
import { EmptyState } from '../../pieces/page/empty-state.tsx';
import { Part } from '../../pieces/page/part.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { PageHead } from '../page-head.tsx';
import { paths, to } from '../paths.ts';
import type { RoundSummary } from './round-line.tsx';
import { RoundLine } from './round-line.tsx';
import './rounds.css';

/** How many finished rounds are shown until somebody asks for more. */
const FIRST = 12;

/** Every round, newest first: what is planned or not finished stands before what is. */
export function RoundsScreen(): JSX.Element {
  const { home } = useDesk();
  const words = useAllWords();
  const [shown, setShown] = useState(FIRST);
  const all = rounds(home).map((round) => ({ round, progress: progressOf(home, round) }));
  const settled = all.filter(({ progress }) => progress.stage === 'settled');
  const prepare = (
    <Button kind="main" href={to(paths.newRound)}>
      {words.rounds.prepare}
    </Button>
  );
  if (all.length === 0) {
    return (
      <>
        <PageHead title={words.rounds.title} />
        <EmptyState title={words.rounds.none} action={prepare}>
          {words.rounds.noneWhy}
        </EmptyState>
      </>
    );
  }
  const is = (stages: readonly RoundStage[]) =>
    all.filter(({ progress }) => stages.includes(progress.stage));
  const open = all.filter(({ progress }) => !['planned', 'settled'].includes(progress.stage));
  return (
    <>
      <PageHead title={words.rounds.title} />
      <div class="button-row">{prepare}</div>
      <Group title={words.roundList.open} rounds={open} />
      <Group title={words.roundList.coming} rounds={is(['planned'])} />
      <Group title={words.roundList.settled} rounds={settled.slice(0, shown)}>
        {settled.length > shown && (
          <Button onPress={() => setShown(shown + FIRST)}>{words.roundList.older}</Button>
        )}
      </Group>
    </>
  );
}

function Group({
  title,
  rounds: group,
  children,
}: {
  readonly title: string;
  readonly rounds: readonly RoundSummary[];
  readonly children?: JSX.Element | false;
}): JSX.Element | null {
  if (group.length === 0) return null;
  return (
    <Part title={title}>
      <ul class="round-list">
        {group.map((each) => (
          <RoundLine key={each.round.id} {...each} />
        ))}
      </ul>
      {children}
    </Part>
  );
}
