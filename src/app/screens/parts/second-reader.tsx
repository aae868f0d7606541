import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { StaffId } from '../../../care/ids.ts';
import { everyMember, workingHere } from '../../../care/staff/member.ts';
import { todayOf, useDesk } from '../../desk/desk.ts';
import { namesIn } from '../../desk/names.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Select } from '../../pieces/form/select.tsx';
import { CodeText } from '../../pieces/scan/code-text.tsx';
import { useWords } from '../../words/use-words.ts';

interface SecondReaderProps {
  /** The typed code that looks like another. */
  readonly code: string;
  readonly onSecond: (colleague: StaffId) => void;
}

/** A typed code that looks like another: a colleague reads the label too, and says so in their name. */
export function SecondReader({ code, onSecond }: SecondReaderProps): JSX.Element {
  const desk = useDesk();
  const words = useWords();
  const say = words.identity;
  const [who, setWho] = useState<StaffId | ''>('');
  const others = everyMember(desk.home).filter(
    (member) => member.id !== desk.me && workingHere(member, todayOf(desk)),
  );
  return (
    <div class="second-reader">
      <CodeText code={code} />
      <Select
        id="second-reader"
        label={say.whoReads}
        value={who}
        onValue={(value) => setWho(value as StaffId | '')}
        options={others.map(({ id, name }) => ({ value: id, label: name }))}
      />
      {who !== '' && (
        <Button icon="look" onPress={() => onSecond(who)}>
          {say.secondReads(namesIn(desk.home, words.refusals.somebody).staff(who))}
        </Button>
      )}
    </div>
  );
}
