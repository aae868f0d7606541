import type { JSX } from 'preact';
import type { Pair } from '../../../care/custody/turn.ts';
import type { StaffId } from '../../../care/ids.ts';
import type { Skill } from '../../../care/staff/facts.ts';
import { competent, everyMember, workingHere } from '../../../care/staff/member.ts';
import { todayOf, useDesk } from '../../desk/desk.ts';
import { Select } from '../../pieces/form/select.tsx';
import { useWords } from '../../words/use-words.ts';

/** Who swabs and who records: colleagues whose training for it is in date today. */
export function PairPicker({
  pair,
  onPair,
}: {
  readonly pair: Pair;
  readonly onPair: (pair: Pair) => void;
}): JSX.Element {
  const desk = useDesk();
  const { turn } = useWords();
  const on = todayOf(desk);
  const options = (skill: Skill, chosen: StaffId) =>
    everyMember(desk.home)
      .filter(
        (member) =>
          member.id === chosen || (workingHere(member, on) && competent(member, skill, on)),
      )
      .map((member) => ({ value: member.id, label: member.name }));
  return (
    <div class="pair-picker">
      <Select
        id="swabber"
        label={turn.next.swabber}
        value={pair.swabber}
        onValue={(value) => onPair({ ...pair, swabber: value as StaffId })}
        options={options('swab', pair.swabber)}
      />
      <Select
        id="recorder"
        label={turn.next.recorder}
        value={pair.recorder}
        onValue={(value) => onPair({ ...pair, recorder: value as StaffId })}
        options={options('record', pair.recorder)}
      />
    </div>
  );
}
