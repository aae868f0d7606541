import type { JSX } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import type { PersonId, StaffId } from '../../../../care/ids.ts';
import type { HandLane } from '../../../../care/rounds/planning/by-hand.ts';
import { handLanes, madeByHand, movedTo } from '../../../../care/rounds/planning/by-hand.ts';
import type { Broken } from '../../../../care/rounds/planning/check-plan.ts';
import type { PlanInstance } from '../../../../care/rounds/planning/instance.ts';
import { clock } from '../../../../care/rounds/planning/minutes.ts';
import type { RoundPlanMade } from '../../../../care/rounds/planning/plan.ts';
import type { PlanChance } from '../../../../care/rounds/planning/plan-chance.ts';
import { movedSince } from '../../../../care/rounds/planning/replan.ts';
import type { Names } from '../../../desk/names.ts';
import { Button } from '../../../pieces/form/button.tsx';
import { Notice } from '../../../pieces/list/notice.tsx';
import { useAnnounce } from '../../../pieces/page/live-region.tsx';
import { useAllWords } from '../../../words/use-all-words.ts';
import { sayBroken, sayRepair, sayRule } from './say-plan.ts';
import { Timeline } from './timeline.tsx';
import { useDrag } from './use-drag.ts';
import type { PlanFound } from './use-planning.ts';
import { VisitRow } from './visit-row.tsx';

interface PlanViewProps {
  readonly found: PlanFound;
  readonly names: Names;
  readonly onTake: (plan: RoundPlanMade) => void;
  /** Ends the search for what could be changed. */
  readonly onStop: () => void;
}

interface Shown {
  readonly plan: RoundPlanMade;
  readonly broken: readonly Broken[];
  readonly chance: PlanChance;
  readonly lateBy: number;
}

const DRAWS = 400;

/** The plan that was found, to be looked at, changed by hand, and used. */
export function PlanView({ found, names, onTake, onStop }: PlanViewProps): JSX.Element {
  const { instance, made } = found;
  const words = useAllWords();
  const say = words.planner;
  const announce = useAnnounce();
  const [hand, setHand] = useState<readonly HandLane[] | undefined>(undefined);
  const pressed = useRef<string | undefined>(undefined);
  useEffect(() => setHand(undefined), [made]);
  // The row went elsewhere under the finger: the button that was pressed keeps the focus.
  useEffect(() => {
    if (pressed.current === undefined) return;
    const button = document.getElementById(pressed.current) as HTMLButtonElement | null;
    const sibling = button?.parentElement?.querySelector<HTMLButtonElement>('button:enabled');
    (button?.disabled === true ? sibling : button)?.focus();
    pressed.current = undefined;
  }, [hand]);

  const asFound: Shown = {
    ...{ plan: made.plan, broken: [], chance: made.chance },
    lateBy: made.plan.finish + instance.rules.packMinutes - Math.max(...instance.rules.collections),
  };
  const shown =
    hand === undefined ? asFound : madeByHand(instance, hand, { seed: 1, draws: DRAWS });
  const effect = effectOf(shown, words, { names, instance });
  const breaks = sayBroken(shown.broken, instance, { words, names });

  const move = (
    person: string,
    to: { readonly lane: number; readonly at: number },
    by?: string,
  ) => {
    const next = movedTo(hand ?? handLanes(made.plan), person, to);
    pressed.current = by;
    setHand(next);
    const after = madeByHand(instance, next, { seed: 1, draws: DRAWS });
    announce(effectOf(after, words, { names, instance }).join(' '));
  };
  const drag = useDrag(move);
  const wrong = new Set(shown.broken.flatMap(({ person }) => person ?? []));
  const out = shown.plan.leftOut.map((id) => names.person(id as PersonId));
  const moved = movedSince(instance, shown.plan);

  return (
    <section class="plan-view" aria-label={say.planned}>
      <h3>{say.planned}</h3>
      {out.length > 0 && <Notice kind="look" title={say.leftOut(out)} />}
      <p class="plan-effect">{effect.slice(1 + breaks.length).join(' ')}</p>
      {shown.broken.length > 0 ? (
        <Notice kind="stop" title={effect[0]}>
          {breaks.join(' ')}
        </Notice>
      ) : (
        <p>
          {say.keepsAll} {hand === undefined && (made.proven ? say.proven : say.gap(made.gap))}{' '}
          {moved.otherPair.length > 0 && say.moved(moved.otherPair.length)}{' '}
          {moved.later.length > 0 && say.later(moved.later.length)}
        </p>
      )}
      <Timeline {...{ instance, names, wrong }} plan={shown.plan} />
      {shown.plan.lanes.map((lane, k) => {
        const [first] = lane;
        if (!first) return null;
        return (
          <div key={`${first.swabber} ${first.recorder}`}>
            <h4>
              {say.pairOf(
                names.staff(first.swabber as StaffId),
                names.staff(first.recorder as StaffId),
              )}
            </h4>
            <ol class="plan-list">
              {lane.map((visit, at) => (
                <VisitRow
                  key={visit.person}
                  {...{ instance, visit, at, names, drag }}
                  plan={shown.plan}
                  lane={k}
                  of={lane.length}
                  lanes={shown.plan.lanes.length}
                  wrong={wrong.has(visit.person)}
                  onMove={(to, by) => move(visit.person, to, by)}
                />
              ))}
            </ol>
          </div>
        );
      })}
      <Changes found={found} names={names} onStop={onStop} />
      <div class="button-row">
        <Button onPress={() => onTake(shown.plan)}>{say.take}</Button>
        {hand !== undefined && (
          <Button kind="quiet" onPress={() => setHand(undefined)}>
            {say.back}
          </Button>
        )}
      </div>
    </section>
  );
}

/** What an order means, told at once: rules, time, chance. */
function effectOf(
  { plan, broken, chance, lateBy }: Shown,
  words: ReturnType<typeof useAllWords>,
  { names, instance }: { readonly names: Names; readonly instance: PlanInstance },
): readonly string[] {
  const say = words.planner;
  const breaks = sayBroken(broken, instance, { words, names });
  return [
    breaks.length === 0 ? say.keepsAll : say.breaks(breaks.length),
    ...breaks,
    say.packed(clock(plan.finish + instance.rules.packMinutes)),
    lateBy > 0 ? say.late(lateBy) : say.early(-lateBy),
    say.chance(chance.packed),
    say.error(2 * chance.error),
    ...(chance.everyone < chance.packed ? [say.everyone(chance.everyone)] : []),
  ];
}

/** Which rules conflict, and what would be enough to change. */
function Changes({
  found,
  names,
  onStop,
}: {
  readonly found: PlanFound;
  readonly names: Names;
  readonly onStop: () => void;
}): JSX.Element {
  const words = useAllWords();
  const say = words.planner;
  const { instance, changes, asking } = found;
  const { conflict, repairs = [] } = changes ?? {};
  return (
    <>
      {asking !== undefined && (
        <div class="plan-progress">
          <progress value={asking} max={1} aria-label={say.asking} />
          <p role="status">{say.asking}</p>
          <Button onPress={onStop}>{say.stopAsking}</Button>
        </div>
      )}
      {conflict !== undefined && (
        <div class="plan-changes">
          <h4>{say.conflict}</h4>
          {!conflict.proven && <p>{say.notProven}</p>}
          <ul>
            {conflict.rules.map((rule) => (
              <li key={JSON.stringify(rule)}>{sayRule(rule, instance, { words, names })}</li>
            ))}
          </ul>
        </div>
      )}
      {repairs.length > 0 && (
        <div class="plan-changes">
          <h4>{say.repair}</h4>
          <ul>
            {repairs.map((tried) => (
              <li key={JSON.stringify(tried.repair)}>{sayRepair(tried, { words, names })}</li>
            ))}
          </ul>
        </div>
      )}
    </>
  );
}
