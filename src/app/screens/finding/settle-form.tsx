import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { FactId } from '../../../care/ids.ts';
import type { Verdict } from '../../../care/quality/facts.ts';
import type { Finding } from '../../../care/quality/finding.ts';
import { allow } from '../../../care/refusal.ts';
import { settleFinding } from '../../../procedures/settle-finding.ts';
import { useDesk } from '../../desk/desk.ts';
import { namesIn } from '../../desk/names.ts';
import { KeepForm } from '../../keeping/keep-form.tsx';
import { useKeep } from '../../keeping/use-keep.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Choice } from '../../pieces/form/choice.tsx';
import { Field } from '../../pieces/form/field.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { useVerdictOptions } from './verdict-options.tsx';

/** A senior says what is right, and how they know. What came in meanwhile is read first. */
export function SettleForm({ found }: { readonly found: Finding }): JSX.Element {
  const desk = useDesk();
  const words = useAllWords();
  const say = words.findings;
  const keep = useKeep();
  const options = useVerdictOptions(found);
  const [picked, setPicked] = useState('');
  const [reason, setReason] = useState('');
  /** What was on the screen when it was opened: a settlement covers what its author has read. */
  const [seen, setSeen] = useState(found.members);
  const more = found.members.some((id) => !seen.includes(id));

  const submit = async (): Promise<void> => {
    const wrong = [
      ...(picked === '' ? [{ field: 'verdict', text: say.pick }] : []),
      ...(reason.trim() === '' ? [{ field: 'reason', text: words.refusals.reasonMissing }] : []),
    ];
    const [verdict, keeps] = picked.split(' ') as [Verdict, FactId | undefined];
    const kept = await keep.keep(wrong, (home, doing) =>
      picked === ''
        ? allow([])
        : settleFinding(
            home,
            { finding: found.id, seen, verdict, reason, ...(keeps !== undefined && { keeps }) },
            doing,
          ),
    );
    if (kept !== undefined) {
      setPicked('');
      setReason('');
      window.scrollTo(0, 0);
    }
  };

  return (
    <KeepForm keep={keep} onKeep={submit} label={say.keep}>
      {more && (
        <Notice
          kind="look"
          title={say.more}
          action={<Button onPress={() => setSeen(found.members)}>{say.moreRead}</Button>}
        >
          {say.moreHow}
        </Notice>
      )}
      <Choice
        id="verdict"
        label={say.question}
        options={options}
        value={picked}
        onValue={setPicked}
        problem={keep.problemOf('verdict')}
      />
      <Field
        id="reason"
        label={say.reason}
        hint={say.reasonHint}
        lines={3}
        value={reason}
        onValue={setReason}
        problem={keep.problemOf('reason')}
      />
      <p>{say.namedSaid(namesIn(desk.home, words.refusals.somebody).staff(desk.me))}</p>
    </KeepForm>
  );
}
