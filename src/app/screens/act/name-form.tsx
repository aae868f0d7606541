import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { StaffId } from '../../../care/ids.ts';
import { allow } from '../../../care/refusal.ts';
import type { Action } from '../../../care/results/actions.ts';
import { after, dayOf, HOUR, wallTime } from '../../../care/time.ts';
import { nameAction } from '../../../procedures/record-result.ts';
import { useDesk } from '../../desk/desk.ts';
import { KeepForm } from '../../keeping/keep-form.tsx';
import { useKeep } from '../../keeping/use-keep.ts';
import { Button } from '../../pieces/form/button.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import type { Moment } from '../parts/moment-field.tsx';
import { instantIn, MomentField } from '../parts/moment-field.tsx';
import { StaffField } from '../parts/staff-field.tsx';

interface NameFormProps {
  readonly action: Action;
  readonly onClose: () => void;
}

/** Gives it to a colleague by a time: the one that policy sets, unless that is over. */
export function NameForm({ action, onClose }: NameFormProps): JSX.Element {
  const desk = useDesk();
  const { acting: say } = useAllWords();
  const keep = useKeep();
  const { zone } = desk.home.service;
  const [who, setWho] = useState<StaffId | ''>(action.named?.data.who ?? desk.me);
  const [moment, setMoment] = useState<Moment>(() => {
    const by = action.due > desk.now() ? action.due : after(desk.now(), HOUR);
    return { day: dayOf(by, zone), time: wallTime(by, zone) };
  });
  const due = instantIn(moment, zone);

  const submit = async (): Promise<void> => {
    const wrong = [
      ...(who === '' ? [{ field: 'who', text: say.fillWho }] : []),
      ...(due === undefined ? [{ field: 'due', text: say.fillWhen }] : []),
    ];
    const { test, kind } = action;
    const kept = await keep.keep(wrong, (home, doing) =>
      who === '' || due === undefined
        ? allow([])
        : nameAction(home, { test, action: kind, who, due }, doing),
    );
    if (kept !== undefined) onClose();
  };

  return (
    <KeepForm
      keep={keep}
      onKeep={submit}
      label={say.keep}
      class="action-form"
      beside={
        <Button kind="quiet" onPress={onClose}>
          {say.back}
        </Button>
      }
    >
      <StaffField
        id="who"
        label={say.who}
        value={who}
        onValue={setWho}
        problem={keep.problemOf('who')}
      />
      <MomentField
        id="due"
        label={say.when}
        value={moment}
        onValue={setMoment}
        problem={keep.problemOf('due')}
      />
    </KeepForm>
  );
}
