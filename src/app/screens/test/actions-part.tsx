import type { JSX } from 'preact';
import type { TestId } from '../../../care/ids.ts';
import type { Action } from '../../../care/results/actions.ts';
import { actionsFor, isSettled } from '../../../care/results/actions.ts';
import { useDesk } from '../../desk/desk.ts';
import { namesIn } from '../../desk/names.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Bead } from '../../pieces/frame/bead.tsx';
import { Part } from '../../pieces/page/part.tsx';
import type { AllWords } from '../../words/en-all.ts';
import { useAllWords } from '../../words/use-all-words.ts';
import { paths, to } from '../paths.ts';

/** What the result asks for and how far each of it is. */
export function ActionsPart({ test }: { readonly test: TestId }): JSX.Element | null {
  const { home } = useDesk();
  const words = useAllWords();
  const say = words.testPage;
  const actions = actionsFor(home, test);
  if (actions.length === 0) return null;
  const names = namesIn(home, words.refusals.somebody);
  return (
    <Part title={say.actions} action={<Button href={to(paths.act(test))}>{say.act}</Button>}>
      <ul class="proof">
        {actions.map((action) => (
          <li key={action.kind}>
            <Bead state={isSettled(action) ? 'done' : action.named ? 'hand' : 'todo'} />
            <p>
              <b>{words.now.actions[action.kind]}</b>. {standing(action, words, names.staff)}
            </p>
          </li>
        ))}
      </ul>
    </Part>
  );
}

type Named = ReturnType<typeof namesIn>['staff'];

export function standing(action: Action, { acting: say }: AllWords, name: Named): string {
  const { stopped, done, named, due } = action;
  if (stopped !== undefined) return say.stopped[stopped];
  if (done !== undefined) {
    const said = done.data.outcome === 'done' ? say.done : say.notNeeded;
    return said(name(done.by), done.at);
  }
  return `${named === undefined ? say.nobody : say.named(name(named.data.who))} ${say.due(due)}.`;
}
