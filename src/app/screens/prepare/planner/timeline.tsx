import type { JSX } from 'preact';
import type { PersonId, StaffId } from '../../../../care/ids.ts';
import { cohorts } from '../../../../care/outbreaks/cohort.ts';
import type { PlanInstance } from '../../../../care/rounds/planning/instance.ts';
import { clock } from '../../../../care/rounds/planning/minutes.ts';
import type { RoundPlanMade } from '../../../../care/rounds/planning/plan.ts';
import type { Names } from '../../../desk/names.ts';
import { useAllWords } from '../../../words/use-all-words.ts';

interface TimelineProps {
  readonly instance: PlanInstance;
  readonly plan: RoundPlanMade;
  readonly names: Names;
  readonly wrong: ReadonlySet<string>;
}

const HOUR = 60;

/** The round at a glance: a bar for each pair, a block for each person, and the courier's time. */
export function Timeline({ instance, plan, names, wrong }: TimelineProps): JSX.Element {
  const { planner: say, prepare } = useAllWords();
  const present = cohorts.filter((cohort) => instance.people.some((p) => p.cohort === cohort));
  const courier = Math.max(...instance.rules.collections);
  const from = Math.floor(instance.from / HOUR) * HOUR;
  const until =
    Math.ceil(Math.max(courier, plan.finish + instance.rules.packMinutes) / HOUR) * HOUR;
  const share = (minute: number): string => `${(100 * (minute - from)) / (until - from)}%`;
  const every = Math.max(1, Math.ceil((until - from) / HOUR / 6)) * HOUR;
  const marks = Array.from(
    { length: Math.floor((until - from) / every) + 1 },
    (_, i) => from + i * every,
  );
  return (
    <figure class="plan-picture" aria-label={say.picture}>
      <div class="plan-hours" aria-hidden="true">
        {marks.map((at) => (
          <span key={at} style={{ insetInlineStart: share(at) }}>
            {clock(at)}
          </span>
        ))}
      </div>
      {plan.lanes.map((lane) => {
        const [first] = lane;
        if (!first) return null;
        const pair = say.pairOf(
          names.staff(first.swabber as StaffId),
          names.staff(first.recorder as StaffId),
        );
        return (
          <div key={pair} class="plan-bar" aria-hidden="true">
            <span class="plan-bar-name">{pair}</span>
            <div class="plan-track">
              {lane.map(({ person, start, end }) => (
                <span
                  key={person}
                  class="plan-block"
                  data-cohort={instance.people.find(({ id }) => id === person)?.cohort}
                  data-wrong={wrong.has(person)}
                  title={names.person(person as PersonId)}
                  style={{
                    insetInlineStart: share(start),
                    inlineSize: `calc(${share(from + end - start)} - 1px)`,
                  }}
                >
                  <span>{names.person(person as PersonId)}</span>
                </span>
              ))}
              {instance.rules.collections.map((at) => (
                <span key={at} class="plan-courier" style={{ insetInlineStart: share(at) }} />
              ))}
            </div>
          </div>
        );
      })}
      <div class="plan-legend" aria-hidden="true">
        {present.map((cohort) => (
          <span key={cohort}>
            <span class="plan-block" data-cohort={cohort} /> {prepare.cohorts[cohort]}
          </span>
        ))}
      </div>
      <figcaption>{say.courierAt(instance.rules.collections.map(clock))}</figcaption>
    </figure>
  );
}
