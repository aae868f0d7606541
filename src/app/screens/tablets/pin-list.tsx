import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { Member } from '../../../care/staff/member.ts';
import { everyMember, workingHere } from '../../../care/staff/member.ts';
import { todayOf, useDesk } from '../../desk/desk.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Field } from '../../pieces/form/field.tsx';
import { DataTable } from '../../pieces/list/data-table.tsx';
import { Dialog } from '../../pieces/page/dialog.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { useAsked } from './use-asked.ts';

interface Account {
  readonly staff: string;
  readonly mustChange: boolean;
}

/** Whoever works here, whether they can sign in, and giving them a first PIN. */
export function PinList(): JSX.Element {
  const desk = useDesk();
  const words = useAllWords();
  const say = words.tablets;
  const { value, again } = useAsked<{ readonly accounts: readonly Account[] }>('/accounts');
  const [giving, setGiving] = useState<Member | undefined>(undefined);
  const accounts = new Map(value?.accounts.map((account) => [account.staff, account]));
  const members = everyMember(desk.home).filter((member) => workingHere(member, todayOf(desk)));
  const stateOf = (member: Member) => {
    const account = accounts.get(member.id);
    if (account === undefined) return say.hasNot;
    return account.mustChange ? say.mustChange : say.has;
  };
  return (
    <>
      <DataTable
        caption={say.pins}
        rows={members}
        rowKey={(member) => member.id}
        columns={[
          { key: 'name', label: say.colleague, cell: (member) => member.name },
          {
            key: 'role',
            label: say.role,
            cell: ({ role }) => (role === undefined ? '' : words.roles[role]),
          },
          { key: 'pin', label: say.pin, cell: stateOf },
          {
            key: 'do',
            label: say.set,
            cell: (member) => (
              <div class="button-row">
                <Button
                  label={words.now.about(say.set, member.name)}
                  onPress={() => setGiving(member)}
                >
                  {say.set}
                </Button>
                {accounts.has(member.id) && (
                  <Button
                    label={words.now.about(say.end, member.name)}
                    onPress={() => void desk.server?.endPin(member.id).then(again)}
                  >
                    {say.end}
                  </Button>
                )}
              </div>
            ),
          },
        ]}
      />
      <Dialog
        open={giving !== undefined}
        title={giving === undefined ? '' : say.setTitle(giving.name)}
        onClose={() => setGiving(undefined)}
      >
        {giving !== undefined && (
          <GivePin
            member={giving}
            onDone={() => {
              setGiving(undefined);
              again();
            }}
          />
        )}
      </Dialog>
    </>
  );
}

function GivePin({
  member,
  onDone,
}: {
  readonly member: Member;
  readonly onDone: () => void;
}): JSX.Element {
  const { server } = useDesk();
  const { tablets: say } = useAllWords();
  const [pin, setPin] = useState('');
  const [problem, setProblem] = useState<string | undefined>(undefined);
  const give = async (event: Event) => {
    event.preventDefault();
    const heard = await server?.setPin(member.id, pin);
    if (heard?.ok === true) onDone();
    else setProblem(heard?.turned.reason === 'pin-refused' ? say.poor : say.failed);
  };
  return (
    <form onSubmit={(event) => void give(event)} noValidate>
      <p>{say.setBody}</p>
      <Field
        id="first-pin"
        label={say.newPin}
        hint={say.newPinHint}
        inputMode="numeric"
        wide={12}
        value={pin}
        onValue={setPin}
        problem={problem}
      />
      <Button kind="main" submit>
        {say.keep}
      </Button>
    </form>
  );
}
