import type { JSX } from 'preact';
import { policyOn } from '../../../care/policy/in-force.ts';
import type { Box, Round } from '../../../care/rounds/round.ts';
import { handOver } from '../../../procedures/hand-over.ts';
import { useDesk } from '../../desk/desk.ts';
import { KeepForm } from '../../keeping/keep-form.tsx';
import { useDraft } from '../../keeping/use-draft.ts';
import { useKeep } from '../../keeping/use-keep.ts';
import { Field } from '../../pieces/form/field.tsx';
import { Part } from '../../pieces/page/part.tsx';
import { useAllWords } from '../../words/use-all-words.ts';

interface HandBoxProps {
  readonly box: Box;
  readonly round: Round;
}

/** One box, counted aloud at a distance, and who took it. The count has to be what is in it. */
export function HandBox({ box, round }: HandBoxProps): JSX.Element {
  const { home } = useDesk();
  const words = useAllWords();
  const say = words.handing;
  const draft = useDraft({ count: '', seal: '', courier: '' }, say.title);
  const keep = useKeep();
  const { count, seal, courier } = draft.value;
  const { policy } = policyOn(home, round.planned.data.day);

  const submit = async (): Promise<void> => {
    const empty = (['count', 'seal', 'courier'] as const)
      .filter((field) => draft.value[field].trim() === '')
      .map((field) => ({ field, text: say.fill }));
    const figures =
      /^\d+$/.test(count.trim()) || count.trim() === ''
        ? []
        : [{ field: 'count', text: say.notANumber }];
    const given = { round: round.id, box: box.id, courier, seal, count: Number(count) };
    const kept = await keep.keep([...empty, ...figures], (now) => handOver(now, given));
    if (kept !== undefined) draft.drop();
  };

  return (
    <Part title={say.box}>
      <KeepForm keep={keep} onKeep={submit} label={say.press} icon="courier">
        <p>{say.apart(policy.handOver.distanceMetres.value)}</p>
        <Field
          id="count"
          label={say.count}
          inputMode="numeric"
          wide={4}
          value={count}
          onValue={(value) => draft.set({ count: value })}
          problem={keep.problemOf('count')}
        />
        <Field
          id="seal"
          label={say.seal}
          wide={20}
          value={seal}
          onValue={(value) => draft.set({ seal: value })}
          problem={keep.problemOf('seal')}
        />
        <Field
          id="courier"
          label={say.courier}
          wide={24}
          value={courier}
          onValue={(value) => draft.set({ courier: value })}
          problem={keep.problemOf('courier')}
        />
        <p class="field-hint">{say.time}</p>
      </KeepForm>
    </Part>
  );
}
