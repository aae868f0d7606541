import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { Action } from '../../../care/results/actions.ts';
import { doAction } from '../../../procedures/record-result.ts';
import { KeepForm } from '../../keeping/keep-form.tsx';
import { useKeep } from '../../keeping/use-keep.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Field } from '../../pieces/form/field.tsx';
import { useAllWords } from '../../words/use-all-words.ts';

interface FinishFormProps {
  readonly action: Action;
  readonly outcome: 'done' | 'not-needed';
  readonly onClose: () => void;
}

/** It is done, with a note if there is one; or it is not needed, and why. */
export function FinishForm({ action, outcome, onClose }: FinishFormProps): JSX.Element {
  const { acting: say } = useAllWords();
  const keep = useKeep();
  const [note, setNote] = useState('');
  const needsWhy = outcome === 'not-needed';

  const submit = async (): Promise<void> => {
    const wrong = needsWhy && note.trim() === '' ? [{ field: 'note', text: say.fillWhy }] : [];
    const { test, kind } = action;
    const kept = await keep.keep(wrong, (home) =>
      doAction(home, { test, action: kind, outcome, note }),
    );
    if (kept !== undefined) onClose();
  };

  return (
    <KeepForm
      keep={keep}
      onKeep={submit}
      label={needsWhy ? say.notNow : say.doneNow}
      class="action-form"
      beside={
        <Button kind="quiet" onPress={onClose}>
          {say.back}
        </Button>
      }
    >
      <Field
        id="note"
        label={needsWhy ? say.why : say.note}
        lines={2}
        optional={!needsWhy}
        value={note}
        onValue={setNote}
        problem={keep.problemOf('note')}
      />
    </KeepForm>
  );
}
