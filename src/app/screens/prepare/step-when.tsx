import type { JSX } from 'preact';
import type { StaffId } from '../../../care/ids.ts';
import { policyOn, testKindOf } from '../../../care/policy/in-force.ts';
import type { Day } from '../../../care/time.ts';
import { momentOf } from '../../../care/time.ts';
import { DateField, TimeField } from '../../pieces/form/date-field.tsx';
import { Select } from '../../pieces/form/select.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { WishNotice } from '../parts/wish-notice.tsx';
import { againstIn } from './against-wishes.ts';
import { onDay, PACK_MINUTES } from './draft.ts';
import { PairFields } from './pair-fields.tsx';
import type { Prepare } from './use-prepare.ts';
import { packBy } from './wrong.ts';

export interface StepProps {
  readonly prepare: Prepare;
  readonly problemOf: (field: string) => string | undefined;
}

/** Day, test, kit, courier, and who goes round. */
export function StepWhen({ prepare, problemOf }: StepProps): JSX.Element {
  const { prepare: say } = useAllWords();
  const { draft, set, desk } = prepare;
  const { home } = desk;
  const { policy } = policyOn(home, draft.day);
  const kits = testKindOf(policy, draft.test)?.kits ?? [];
  const by = packBy(prepare);
  const courierOver =
    draft.courier !== '' && momentOf(draft.day, draft.courier, home.service.zone) < desk.now();
  const change = (more: Partial<{ day: Day; test: string }>): void =>
    set(onDay(home, draft, { day: draft.day, test: draft.test, ...more }));
  return (
    <>
      <div class="field-row">
        <DateField
          id="day"
          label={say.day}
          value={draft.day}
          onValue={(value) => value !== '' && change({ day: value as Day })}
          problem={problemOf('day')}
        />
        {policy.tests.length > 1 && (
          <Select
            id="test"
            label={say.test}
            value={draft.test}
            onValue={(value) => change({ test: value })}
            options={policy.tests.map(({ id, name }) => ({ value: id, label: name }))}
          />
        )}
        {kits.length > 1 && (
          <Select
            id="kitKind"
            label={say.kit}
            value={draft.kitKind}
            onValue={(kitKind) => set({ kitKind })}
            options={policy.kits
              .filter(({ id }) => kits.includes(id))
              .map(({ id, name }) => ({ value: id, label: name }))}
          />
        )}
      </div>
      <div class="field-row">
        <TimeField
          id="courier"
          label={say.courier}
          value={draft.courier}
          onValue={(courier) => set({ courier })}
          problem={problemOf('courier')}
        />
        <Select
          id="packMinutes"
          label={say.pack}
          value={String(draft.packMinutes)}
          onValue={(value) => value !== '' && set({ packMinutes: Number(value) })}
          options={minutesWith(draft.packMinutes).map((count) => ({
            value: String(count),
            label: say.minutes(count),
          }))}
        />
      </div>
      {by !== undefined &&
        (courierOver ? <Notice kind="look" title={say.courierOver} /> : <p>{say.packBy(by)}</p>)}
      <PairFields
        pair={draft}
        day={draft.day}
        onPair={(pair: Partial<Record<'swabber' | 'recorder', StaffId | ''>>) => set(pair)}
        problemOf={problemOf}
      />
      <WishNotice against={againstIn(prepare)} />
    </>
  );
}

const minutesWith = (chosen: number): number[] =>
  [...new Set([...PACK_MINUTES, chosen])].sort((a, b) => a - b);
