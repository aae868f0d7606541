import type { JSX } from 'preact';
import type { StaffId } from '../../../care/ids.ts';
import { everyMember, workingHere } from '../../../care/staff/member.ts';
import { todayOf, useDesk } from '../../desk/desk.ts';
import { Select } from '../../pieces/form/select.tsx';

interface StaffFieldProps {
  readonly id: string;
  readonly label: string;
  readonly value: StaffId | '';
  readonly onValue: (value: StaffId | '') => void;
  readonly problem?: string | undefined;
}

/** A colleague who works here now. */
export function StaffField(props: StaffFieldProps): JSX.Element {
  const desk = useDesk();
  const today = todayOf(desk);
  return (
    <Select
      {...props}
      onValue={(value) => props.onValue(value as StaffId | '')}
      options={everyMember(desk.home)
        .filter((member) => workingHere(member, today))
        .map(({ id, name }) => ({ value: id, label: name }))}
    />
  );
}
