import type { JSX } from 'preact';
import type { StaffId } from '../../../care/ids.ts';
import type { Skill } from '../../../care/staff/facts.ts';
import { everyMember, workingHere } from '../../../care/staff/member.ts';
import type { Day } from '../../../care/time.ts';
import { skillRefusal } from '../../../procedures/take-swab/start.ts';
import { useDesk } from '../../desk/desk.ts';
import { sayRefusal } from '../../desk/say-refusal.ts';
import { Select } from '../../pieces/form/select.tsx';
import { Disclosure } from '../../pieces/page/disclosure.tsx';
import { useAllWords } from '../../words/use-all-words.ts';

interface PairFieldsProps {
  readonly pair: { readonly swabber: StaffId | ''; readonly recorder: StaffId | '' };
  readonly day: Day;
  readonly onPair: (pair: Partial<Record<'swabber' | 'recorder', StaffId>>) => void;
  readonly problemOf: (field: string) => string | undefined;
}

/** Who swabs and who records: colleagues in date that day; the others are named with the reason. */
export function PairFields({ pair, day, onPair, problemOf }: PairFieldsProps): JSX.Element {
  const { home } = useDesk();
  const words = useAllWords();
  const here = everyMember(home).filter((member) => workingHere(member, day));
  const may = (skill: Skill) =>
    here.filter(({ id }) => skillRefusal(home, id, { skill, on: day }) === undefined);
  const not = (['swab', 'record'] as const).flatMap((skill) =>
    here.flatMap(({ id }) => {
      const refusal = skillRefusal(home, id, { skill, on: day });
      return refusal === undefined ? [] : [{ key: `${id}-${skill}`, refusal }];
    }),
  );
  const field = (role: 'swabber' | 'recorder', skill: Skill) => (
    <Select
      id={role}
      label={words.prepare[role]}
      value={pair[role]}
      onValue={(value) => onPair({ [role]: value as StaffId })}
      options={may(skill).map(({ id, name }) => ({ value: id, label: name }))}
      problem={problemOf(role)}
    />
  );
  return (
    <>
      <div class="field-row">
        {field('swabber', 'swab')}
        {field('recorder', 'record')}
      </div>
      {not.length > 0 && (
        <Disclosure title={words.prepare.whoMayNot(not.length)}>
          <ul class="prepare-not">
            {not.map(({ key, refusal }) => (
              <li key={key}>{sayRefusal(refusal, { words, home })}</li>
            ))}
          </ul>
        </Disclosure>
      )}
    </>
  );
}
