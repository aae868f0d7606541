import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { StaffId } from '../../../care/ids.ts';
import type { Round } from '../../../care/rounds/round.ts';
import type { Uncollected } from '../../../care/rounds/uncollected.ts';
import { rebookCourier } from '../../../procedures/plan-round.ts';
import { todayOf, useDesk } from '../../desk/desk.ts';
import { KeepForm } from '../../keeping/keep-form.tsx';
import { useKeep } from '../../keeping/use-keep.ts';
import { Notice } from '../../pieces/list/notice.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import type { Moment } from '../parts/moment-field.tsx';
import { instantIn, MomentField } from '../parts/moment-field.tsx';
import { StaffField } from '../parts/staff-field.tsx';

interface BookAgainProps {
  readonly round: Round;
  readonly here: Uncollected;
}

/** Another collection: when, and the name of whoever has it in hand. */
export function BookAgain({ round, here }: BookAgainProps): JSX.Element {
  const desk = useDesk();
  const { handing: say } = useAllWords();
  const keep = useKeep();
  const [moment, setMoment] = useState<Moment>({ day: todayOf(desk), time: '' });
  const [who, setWho] = useState<StaffId | ''>(desk.me);
  const due = instantIn(moment, desk.home.service.zone);

  const submit = async (): Promise<void> => {
    const wrong = [
      ...(due === undefined ? [{ field: 'due', text: say.fill }] : []),
      ...(who === '' ? [{ field: 'who', text: say.fill }] : []),
    ];
    await keep.keep(wrong, (home, doing) =>
      due === undefined || who === ''
        ? { ok: true, value: [] }
        : rebookCourier(home, { round: round.id, due, who }, doing),
    );
  };

  return (
    <KeepForm keep={keep} onKeep={submit} label={say.booked}>
      <h3>{say.bookAgain}</h3>
      <p>{say.bookLead}</p>
      <MomentField
        id="due"
        label={say.when}
        value={moment}
        onValue={setMoment}
        problem={keep.problemOf('due')}
      />
      {due !== undefined && due > here.keepsUntil && (
        <Notice kind="look" title={say.laterThanKept} />
      )}
      <StaffField
        id="who"
        label={say.who}
        value={who}
        onValue={setWho}
        problem={keep.problemOf('who')}
      />
    </KeepForm>
  );
}
