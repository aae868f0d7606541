import type { JSX } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { Button } from '../../pieces/form/button.tsx';
import { Field } from '../../pieces/form/field.tsx';
import { Fieldset } from '../../pieces/form/fieldset.tsx';
import { Icon } from '../../pieces/icon/icon.tsx';
import { useAnnounce } from '../../pieces/page/live-region.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import './rungs.css';

/** A step as it is typed. `step` is its name in the record, and stays when it is reworded. */
export interface RungDraft {
  readonly key: string;
  readonly step?: string;
  readonly title: string;
  readonly minutes: string;
}

interface RungsProps {
  readonly rungs: readonly RungDraft[];
  readonly problemOf: (field: string) => string | undefined;
  readonly onRungs: (rungs: readonly RungDraft[]) => void;
}

/** The ladder as fields, each step with a way up, down and out; all by keyboard, nothing is dragged. */
export function Rungs({ rungs, problemOf, onRungs }: RungsProps): JSX.Element {
  const { policy } = useAllWords();
  const say = policy.amend;
  const announce = useAnnounce();
  const wanted = useRef<string>();
  // A step that moved takes its buttons along; the focus follows it to its new place.
  useLayoutEffect(() => {
    if (wanted.current === undefined) return;
    const target = document.getElementById(wanted.current);
    const other = wanted.current.replace(/^up|^down/, (way) => (way === 'up' ? 'down' : 'up'));
    const off = target instanceof HTMLButtonElement && target.disabled;
    (off ? document.getElementById(other) : target)?.focus();
    wanted.current = undefined;
  });
  const named = ({ title }: RungDraft): string => title.trim() || say.nameless;
  const change = (at: number, part: Partial<RungDraft>): void =>
    onRungs(rungs.map((rung, i) => (i === at ? { ...rung, ...part } : rung)));
  return (
    <Fieldset id="steps" label={say.steps} hint={say.fewest} problem={problemOf('steps')}>
      <ol class="rungs">
        {rungs.map((rung, i) => (
          <li key={rung.key} class="rung">
            <p class="soft">{say.stepOf(i + 1, rungs.length)}</p>
            <Field
              id={`title-${i}`}
              label={say.titleOf(i + 1)}
              value={rung.title}
              onValue={(title) => change(i, { title: title.replaceAll(/\s*\n\s*/g, ' ') })}
              problem={problemOf(`title-${i}`)}
              lines={2}
            />
            <Field
              id={`minutes-${i}`}
              label={say.minutesOf(i + 1)}
              value={rung.minutes}
              onValue={(minutes) => change(i, { minutes })}
              problem={problemOf(`minutes-${i}`)}
              inputMode="numeric"
              wide={3}
            />
            <div class="button-row">
              {([-1, 1] as const).map((by) => (
                <button
                  key={by}
                  id={`${by < 0 ? 'up' : 'down'}-${rung.key}`}
                  type="button"
                  class="button"
                  aria-label={by < 0 ? say.up(named(rung)) : say.down(named(rung))}
                  disabled={by < 0 ? i === 0 : i === rungs.length - 1}
                  onClick={() => move(i, by)}
                >
                  <Icon name={by < 0 ? 'up' : 'down'} />
                </button>
              ))}
              <Button label={say.removeOf(named(rung))} onPress={() => remove(i)}>
                {say.remove}
              </Button>
            </div>
          </li>
        ))}
      </ol>
      <Button onPress={add}>{say.add}</Button>
    </Fieldset>
  );

  function move(at: number, by: -1 | 1): void {
    const rung = rungs[at];
    if (rung === undefined) return;
    const next = rungs.filter((each) => each !== rung);
    next.splice(at + by, 0, rung);
    wanted.current = `${by < 0 ? 'up' : 'down'}-${rung.key}`;
    onRungs(next);
    announce(say.movedTo(named(rung), at + by + 1));
  }

  function remove(at: number): void {
    const rung = rungs[at];
    if (rung === undefined) return;
    wanted.current = `title-${Math.max(0, Math.min(at, rungs.length - 2))}`;
    onRungs(rungs.filter((each) => each !== rung));
    announce(say.removed(named(rung)));
  }

  function add(): void {
    const keys = rungs.map(({ key }) => key);
    let number = 1;
    while (keys.includes(`new-${number}`)) number += 1;
    wanted.current = `title-${rungs.length}`;
    onRungs([...rungs, { key: `new-${number}`, title: '', minutes: '5' }]);
    announce(say.added);
  }
}
