import type { JSX } from 'preact';
import type { TestId } from '../../../care/ids.ts';
import type { ToRegister } from '../../../care/results/registering.ts';
import { useDesk } from '../../desk/desk.ts';
import { namesIn } from '../../desk/names.ts';
import { Bead } from '../../pieces/frame/bead.tsx';
import type { BeadState } from '../../pieces/frame/bead-state.ts';
import { useAllWords } from '../../words/use-all-words.ts';
import { isDone } from './register-data.ts';

interface BagStripProps {
  readonly list: readonly ToRegister[];
  readonly at: number;
  readonly onChoose: (test: TestId) => void;
}

/** The bags on one wire: what is registered, which one is in hand, what needs somebody. */
export function BagStrip({ list, at, onChoose }: BagStripProps): JSX.Element {
  const { home } = useDesk();
  const words = useAllWords();
  const say = words.registering;
  const names = namesIn(home, words.refusals.somebody);
  return (
    <div class="bag-strip">
      <p role="status">{say.progress(list.filter(isDone).length, list.length)}</p>
      <ol aria-label={say.strip}>
        {list.map((each, i) => {
          const state = stateOf(each, i === at);
          return (
            <li key={each.test.id}>
              <button
                type="button"
                aria-current={i === at ? 'step' : undefined}
                aria-label={say.bead({
                  at: i + 1,
                  name: names.person(each.person),
                  state: words.frame.states[state],
                })}
                onClick={() => onChoose(each.test.id)}
              >
                <Bead state={state} />
              </button>
            </li>
          );
        })}
      </ol>
    </div>
  );
}

function stateOf(each: ToRegister, current: boolean): BeadState {
  if (isDone(each)) return 'done';
  if (each.held.length > 0) return 'look';
  if (current) return 'hand';
  return each.registration.failures.length > 0 ? 'look' : 'todo';
}
