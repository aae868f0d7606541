import type { JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { ToRegister } from '../../../care/results/registering.ts';
import { register } from '../../../procedures/register.ts';
import { useAct } from '../../desk/use-act.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Field } from '../../pieces/form/field.tsx';
import { CodeText } from '../../pieces/scan/code-text.tsx';
import { useAllWords } from '../../words/use-all-words.ts';

interface ReferenceFormProps {
  readonly current: ToRegister;
  /** No other bag waits after this one. */
  readonly last: boolean;
  /** What a scanner read that is no bag of this round. */
  readonly scanned: string;
  readonly onDone: () => void;
}

/** The reference that came back, typed or scanned. One that another test has is turned away. */
export function ReferenceForm({ current, last, scanned, onDone }: ReferenceFormProps): JSX.Element {
  const words = useAllWords();
  const say = words.registering;
  const { act, problem, clear } = useAct();
  const [reference, setReference] = useState('');
  const [amending, setAmending] = useState(false);
  const { registered } = current.registration;
  useEffect(() => {
    if (scanned !== '') setReference(scanned);
  }, [scanned]);

  if (registered !== undefined && !amending) {
    return (
      <div class="button-stack">
        <p>
          <b>{say.registered(registered.data.reference, registered.data.on)}</b>{' '}
          <CodeText code={registered.data.reference} />
        </p>
        <Button icon="note" onPress={() => setAmending(true)}>
          {say.amend}
        </Button>
      </div>
    );
  }

  const submit = async (): Promise<void> => {
    const { id: test } = current.test;
    const kept = await act((home, doing) =>
      register(home, { test, reference, ...(amending && { amend: true }) }, doing),
    );
    if (kept !== undefined) onDone();
  };

  return (
    <form
      class="form-grid"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void submit();
      }}
    >
      <Field
        id="reference"
        label={say.reference}
        hint={say.referenceHint}
        wide={20}
        value={reference}
        onValue={(value) => {
          clear();
          setReference(value);
        }}
        problem={problem}
      />
      <div role="alert" class="unseen">
        {problem}
      </div>
      <Button kind="main" submit icon="tick">
        {last ? say.pressLast : say.press}
      </Button>
    </form>
  );
}
