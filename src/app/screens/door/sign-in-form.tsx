import type { JSX } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import type { StaffId } from '../../../care/ids.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Field } from '../../pieces/form/field.tsx';
import type { Known } from '../../tablet/state.ts';
import type { Tablet } from '../../tablet/tablet.ts';
import { useWords } from '../../words/use-words.ts';
import { saySignIn } from './say-door.ts';

interface SignInProps {
  readonly tablet: Tablet;
  /** Colleagues who have signed in on this tablet before. */
  readonly known: readonly Known[];
  readonly onDone?: (() => void) | undefined;
}

type Chosen = { readonly staff: StaffId; readonly called: string } | 'by-name';

/** Name, then PIN. Whoever has been here before is one tap away and needs no signal. */
export function SignInForm({ tablet, known, onDone }: SignInProps): JSX.Element {
  const { door } = useWords();
  const [chosen, setChosen] = useState<Chosen | undefined>(
    known.length === 0 ? 'by-name' : undefined,
  );
  if (chosen !== undefined) {
    return (
      <PinForm
        tablet={tablet}
        chosen={chosen}
        onDone={onDone}
        onBack={known.length === 0 ? undefined : () => setChosen(undefined)}
      />
    );
  }
  return (
    <>
      <p>{door.who}</p>
      <ul class="door-faces">
        {known.map((one) => (
          <li key={one.staff}>
            <Button icon="person" onPress={() => setChosen(one)}>
              {one.called}
            </Button>
          </li>
        ))}
        <li>
          <Button kind="quiet" onPress={() => setChosen('by-name')}>
            {door.somebodyElse}
          </Button>
        </li>
      </ul>
    </>
  );
}

interface PinProps extends Pick<SignInProps, 'tablet' | 'onDone'> {
  readonly chosen: Chosen;
  readonly onBack: (() => void) | undefined;
}

function PinForm({ tablet, chosen, onDone, onBack }: PinProps): JSX.Element {
  const words = useWords();
  const { door } = words;
  const [name, setName] = useState('');
  const [pin, setPin] = useState('');
  const [newPin, setNewPin] = useState<string | undefined>(undefined);
  const [problem, setProblem] = useState<string | undefined>(undefined);
  const [busy, setBusy] = useState(false);
  const form = useRef<HTMLFormElement>(null);
  useEffect(() => form.current?.querySelector('input')?.focus(), []);

  const submit = async (event: Event) => {
    event.preventDefault();
    if (busy) return;
    setBusy(true);
    const who = chosen === 'by-name' ? { name } : { staff: chosen.staff };
    const asked = { who, pin, ...(newPin !== undefined && { newPin }) };
    const done = await tablet.signIn(asked).finally(() => setBusy(false));
    if (done.ok) {
      onDone?.();
      return;
    }
    if (done.reason === 'pin-must-change' && newPin === undefined) setNewPin('');
    else if (newPin === undefined) setPin('');
    setProblem(saySignIn(done, words));
  };

  return (
    <form ref={form} onSubmit={(event) => void submit(event)} noValidate>
      {problem !== undefined && (
        <p class="field-problem" role="alert">
          {problem}
        </p>
      )}
      {chosen === 'by-name' ? (
        <Field id="name" label={door.name} hint={door.firstTime} value={name} onValue={setName} />
      ) : (
        <p>
          <b>{chosen.called}</b>
        </p>
      )}
      <Field
        id="pin"
        label={door.pin}
        type="password"
        inputMode="numeric"
        wide={12}
        value={pin}
        onValue={setPin}
      />
      {newPin !== undefined && (
        <Field
          id="new-pin"
          label={door.newPin}
          hint={door.newPinHint}
          type="password"
          inputMode="numeric"
          wide={12}
          value={newPin}
          onValue={setNewPin}
        />
      )}
      <div class="button-row">
        <Button kind="main" submit>
          {busy ? door.starting : door.signIn}
        </Button>
        {onBack !== undefined && <Button onPress={onBack}>{door.somebodyElse}</Button>}
      </div>
    </form>
  );
}
