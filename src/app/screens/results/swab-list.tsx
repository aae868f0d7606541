import type { JSX } from 'preact';
import { actionsFor, isSettled } from '../../../care/results/actions.ts';
import type { Swab } from '../../../care/rounds/history.ts';
import { useDesk } from '../../desk/desk.ts';
import { namesIn } from '../../desk/names.ts';
import { Button } from '../../pieces/form/button.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { paths, to } from '../paths.ts';
import { TestWire } from '../test/test-wire.tsx';

interface SwabListProps {
  readonly swabs: readonly Swab[];
  /** Where the button leads: what is to be done, or the whole story. */
  readonly lead: 'act' | 'test';
}

/** Tests with their result, each with its whole wire small beside it. */
export function SwabList({ swabs, lead }: SwabListProps): JSX.Element {
  const { home } = useDesk();
  const words = useAllWords();
  const say = words.results;
  const names = namesIn(home, words.refusals.somebody);
  return (
    <ul class="result-list">
      {swabs.map(({ test, turn, on, outcome }) => {
        const name = names.person(turn.person);
        const todo = actionsFor(home, test.id).filter((action) => !isSettled(action)).length;
        const said =
          outcome.state === 'known'
            ? say.on(say.picks[outcome.result.data.outcome], on)
            : outcome.state === 'held'
              ? say.on(words.frame.states.look, on)
              : say.on(words.record.outcome[outcome.state], on);
        return (
          <li key={test.id}>
            <TestWire test={test} size="small" />
            <div>
              <p class="result-who">{name}</p>
              <p>
                {said}
                {todo > 0 && `. ${say.todo(todo)}`}
              </p>
            </div>
            {lead === 'act' ? (
              <Button href={to(paths.act(test.id))} label={words.parts.about(say.act, name)}>
                {say.act}
              </Button>
            ) : (
              <Button
                href={to(paths.test(test.id))}
                label={words.parts.about(say.open, `${name}, ${said}`)}
              >
                {say.open}
              </Button>
            )}
          </li>
        );
      })}
    </ul>
  );
}
