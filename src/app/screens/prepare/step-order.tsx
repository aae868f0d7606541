import type { JSX } from 'preact';
import { Fragment } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import type { PersonId } from '../../../care/ids.ts';
import type { CohortBreak, Place } from '../../../care/rounds/first-order.ts';
import { cohortBreaks } from '../../../care/rounds/first-order.ts';
import type { Names } from '../../desk/names.ts';
import { namesIn } from '../../desk/names.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { useAnnounce } from '../../pieces/page/live-region.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { moved } from './listed.ts';
import { OrderLine } from './order-line.tsx';
import { Planner } from './planner/planner.tsx';
import type { StepProps } from './step-when.tsx';

/** The order of the round: a sensible one to begin with, and why each stands there. */
export function StepOrder({ prepare }: StepProps): JSX.Element {
  const words = useAllWords();
  const say = words.prepare;
  const announce = useAnnounce();
  const { places, set, draft, desk } = prepare;
  const names = namesIn(desk.home, words.refusals.somebody);
  const breaks = new Map(cohortBreaks(places).map((each) => [each.person, each]));
  const order = places.map(({ person }) => person);
  const pressed = useRef<string | undefined>(undefined);

  // The line was moved under the finger: the button that was pressed keeps the focus.
  useEffect(() => {
    if (pressed.current === undefined) return;
    document.getElementById(pressed.current)?.focus();
    pressed.current = undefined;
  });

  const move = (person: PersonId, by: -1 | 1): void => {
    const next = moved(order, person, by);
    const at = next.indexOf(person) + 1;
    // At either end its button can no longer be pressed: the other one takes the focus.
    const up = at === next.length || (by < 0 && at > 1);
    pressed.current = `${person}-${up ? 'up' : 'down'}`;
    set({ order: next, timed: undefined });
    announce(say.nowAt(names.person(person), at, next.length));
  };

  return (
    <>
      <Planner prepare={prepare} />
      <p>{say.orderLead}</p>
      {draft.order !== undefined && draft.timed === undefined && (
        <p class="order-hand">
          {say.byHand}{' '}
          <Button kind="quiet" onPress={() => set({ order: undefined, timed: undefined })}>
            {say.sensible}
          </Button>
        </p>
      )}
      <ol class="order-list">
        {places.map((place, at) => (
          <Fragment key={place.person}>
            <Between
              before={places[at - 1]}
              place={place}
              back={breaks.get(place.person)}
              names={names}
            />
            <OrderLine
              place={place}
              at={at + 1}
              of={places.length}
              name={names.person(place.person)}
              onMove={(by) => move(place.person, by)}
            />
          </Fragment>
        ))}
      </ol>
    </>
  );
}

/** What changes between one person and the next: the group, and with it all PPE. */
function Between({
  before,
  place,
  back,
  names,
}: {
  readonly before: Place | undefined;
  readonly place: Place;
  readonly back: CohortBreak | undefined;
  readonly names: Names;
}): JSX.Element | null {
  const { prepare: say } = useAllWords();
  if (before === undefined || before.cohort === place.cohort) return null;
  return (
    <li class="order-between">
      {back === undefined ? (
        <p>{say.changeAll}</p>
      ) : (
        <Notice
          kind="look"
          title={say.goesBack(names.person(back.person), names.person(back.after))}
        />
      )}
    </li>
  );
}
