import type { JSX } from 'preact';
import type { PersonId, StaffId } from '../../../../care/ids.ts';
import type { PlanInstance } from '../../../../care/rounds/planning/instance.ts';
import { clock } from '../../../../care/rounds/planning/minutes.ts';
import type { PlannedVisit, RoundPlanMade } from '../../../../care/rounds/planning/plan.ts';
import { whyHere } from '../../../../care/rounds/planning/why-here.ts';
import type { Names } from '../../../desk/names.ts';
import { Icon } from '../../../pieces/icon/icon.tsx';
import { Disclosure } from '../../../pieces/page/disclosure.tsx';
import { useAllWords } from '../../../words/use-all-words.ts';
import { sayBecause } from './say-plan.ts';
import type { Drag } from './use-drag.ts';

export interface VisitRowProps {
  readonly instance: PlanInstance;
  readonly plan: RoundPlanMade;
  readonly visit: PlannedVisit;
  readonly lane: number;
  readonly at: number;
  readonly of: number;
  readonly lanes: number;
  readonly names: Names;
  readonly wrong: boolean;
  readonly drag: Drag;
  readonly onMove: (to: { readonly lane: number; readonly at: number }, by: string) => void;
}

/** One person in the plan: when, who swabs, why here, and ways to another place. */
export function VisitRow(props: VisitRowProps): JSX.Element {
  const { instance, plan, visit, lane, at, of, lanes, names, wrong, drag, onMove } = props;
  const words = useAllWords();
  const { planner: say, prepare } = words;
  const who = names.person(visit.person as PersonId);
  const person = instance.people.find(({ id }) => id === visit.person);
  const lead = person?.preparation?.leadMinutes;
  const over = drag.who !== undefined && drag.over?.lane === lane && drag.over.at === at;
  const id = (what: string) => `plan-${visit.person}-${what}`;
  return (
    <li class="plan-visit" data-place={`${lane} ${at}`} data-over={over} data-wrong={wrong}>
      <span class="plan-time">{clock(visit.start)}</span>
      <div>
        <p class="order-name">
          {who} {wrong && <Icon name="look" />}
        </p>
        <p class="order-why">
          {[prepare.cohorts[person?.cohort ?? 'no-known-exposure'], person?.unit]
            .filter(Boolean)
            .join(', ')}
          . {say.swabs(names.staff(visit.swabber as StaffId))}{' '}
          {lead !== undefined && say.readyAt(clock(visit.start - lead))}
        </p>
        <Disclosure
          title={
            <>
              {say.why} <span class="unseen">{who}</span>
            </>
          }
        >
          <ul>
            {whyHere(instance, plan, visit.person).map((because) => (
              <li key={because.because}>{sayBecause(because, who, { words, names })}</li>
            ))}
          </ul>
        </Disclosure>
      </div>
      <div class="order-moves">
        <span
          class="plan-handle"
          aria-hidden="true"
          title={say.drag(who)}
          {...drag.handlers(visit.person)}
        />
        <button
          id={id('up')}
          type="button"
          class="button"
          aria-label={say.up(who)}
          disabled={at === 0}
          onClick={() => onMove({ lane, at: at - 1 }, id('up'))}
        >
          <Icon name="up" />
        </button>
        <button
          id={id('down')}
          type="button"
          class="button"
          aria-label={say.down(who)}
          disabled={at === of - 1}
          onClick={() => onMove({ lane, at: at + 1 }, id('down'))}
        >
          <Icon name="down" />
        </button>
        {lanes > 1 && (
          <button
            id={id('other')}
            type="button"
            class="button"
            aria-label={say.other(who)}
            onClick={() => onMove({ lane: (lane + 1) % lanes, at }, id('other'))}
          >
            <Icon name="next" />
          </button>
        )}
      </div>
    </li>
  );
}
