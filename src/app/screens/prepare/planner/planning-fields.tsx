import type { JSX } from 'preact';
import type { StaffId } from '../../../../care/ids.ts';
import { competent, memberOf } from '../../../../care/staff/member.ts';
import { namesIn } from '../../../desk/names.ts';
import { Checks } from '../../../pieces/form/choice.tsx';
import { TimeField } from '../../../pieces/form/date-field.tsx';
import { Select } from '../../../pieces/form/select.tsx';
import { useAllWords } from '../../../words/use-all-words.ts';
import type { Prepare } from '../use-prepare.ts';
import { DayFields } from './day-fields.tsx';
import type { PlanningDraft, ShiftDraft } from './planning-draft.ts';
import { beginsAt, shiftOf } from './question.ts';

interface PlanningFieldsProps {
  readonly prepare: Prepare;
  readonly everybody: readonly StaffId[];
}

/** What the planner has to be told: who is on shift and when, how many pairs, what else holds today. */
export function PlanningFields({ prepare, everybody }: PlanningFieldsProps): JSX.Element {
  const words = useAllWords();
  const say = words.planner;
  const { draft, desk } = prepare;
  const names = namesIn(desk.home, words.refusals.somebody);
  const { planning } = draft;
  const set = (change: Partial<PlanningDraft>): void =>
    prepare.set({ planning: { ...planning, ...change } });
  const shiftDraft = (staff: StaffId): ShiftDraft => {
    const { on, from, until } = shiftOf(prepare, staff);
    const away = planning.team[staff]?.away;
    return { on, from, until, ...(away && { away }) };
  };
  const setShift = (staff: StaffId, change: Partial<ShiftDraft>): void =>
    set({ team: { ...planning.team, [staff]: { ...shiftDraft(staff), ...change } } });
  const on = everybody.filter((staff) => shiftOf(prepare, staff).on);
  const maySay = (staff: StaffId): string => {
    const member = memberOf(desk.home, staff);
    const [swab, record] = (['swab', 'record'] as const).map((skill) =>
      competent(member, skill, draft.day),
    );
    return swab ? (record ? say.may.both : say.may.swab) : say.may.record;
  };
  return (
    <>
      <div class="field-row">
        <TimeField
          id="plan-begins"
          label={say.begins}
          value={beginsAt(prepare)}
          onValue={(begins) => set({ begins })}
        />
        <Select
          id="plan-pairs"
          label={say.pairs}
          value={String(planning.pairs)}
          onValue={(count) => count !== '' && set({ pairs: Number(count) })}
          options={[1, 2, 3, 4].map((n) => ({ value: String(n), label: say.pairCount(n) }))}
        />
      </div>
      <Checks
        id="plan-team"
        label={say.team}
        value={on}
        onValue={(chosen) => {
          const team = Object.fromEntries(
            everybody.map((staff) => [staff, { ...shiftDraft(staff), on: chosen.includes(staff) }]),
          );
          set({ team });
        }}
        options={everybody.map((staff) => ({
          value: staff,
          label: memberOf(desk.home, staff).name,
          hint: maySay(staff),
        }))}
      />
      {on.map((staff) => {
        const { from, until } = shiftOf(prepare, staff);
        return (
          <div key={staff} class="field-row">
            <TimeField
              id={`plan-${staff}-from`}
              label={say.from(names.staff(staff))}
              value={from}
              onValue={(value) => setShift(staff, { from: value })}
            />
            <TimeField
              id={`plan-${staff}-until`}
              label={say.until(names.staff(staff))}
              value={until}
              onValue={(value) => setShift(staff, { until: value })}
            />
          </div>
        );
      })}
      <Checks
        id="plan-change"
        label={say.askChange}
        value={planning.mayChange ? ['change'] : []}
        onValue={(chosen) => set({ mayChange: chosen.includes('change') })}
        options={[{ value: 'change', label: say.mayChange }]}
      />
      <DayFields prepare={prepare} on={on} told={{ set, setShift }} />
    </>
  );
}
