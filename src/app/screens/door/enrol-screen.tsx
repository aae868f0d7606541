import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { Button } from '../../pieces/form/button.tsx';
import { Checks } from '../../pieces/form/choice.tsx';
import { Field } from '../../pieces/form/field.tsx';
import type { Tablet } from '../../tablet/tablet.ts';
import { useWords } from '../../words/use-words.ts';
import { DoorFrame } from './door-frame.tsx';
import { sayEnrol } from './say-door.ts';

type Seen = 'os-lock' | 'disk';

/** A manager makes a tablet of this browser, once. */
export function EnrolScreen({ tablet }: { readonly tablet: Tablet }): JSX.Element {
  const words = useWords();
  const { enrol, newPin: newPinLabel, newPinHint, starting } = words.door;
  const [deviceName, setDeviceName] = useState('');
  const [name, setName] = useState('');
  const [pin, setPin] = useState('');
  const [newPin, setNewPin] = useState<string | undefined>(undefined);
  const [seen, setSeen] = useState<readonly Seen[]>([]);
  const [problem, setProblem] = useState<string | undefined>(undefined);
  const [keyGone, setKeyGone] = useState(false);
  const [busy, setBusy] = useState(false);

  const go = async (anew: boolean) => {
    if (busy) return;
    if (seen.length < 2) {
      setProblem(enrol.both);
      return;
    }
    setBusy(true);
    const manager = { who: { name }, pin, ...(newPin !== undefined && { newPin }) };
    const as = { name: deviceName.trim() || '-', osLock: true, diskEncrypted: true, anew };
    const done = await tablet.enrol(manager, as).finally(() => setBusy(false));
    if (done.ok) return;
    if (done.reason === 'pin-must-change') setNewPin('');
    setKeyGone(done.reason === 'tablet-key-gone');
    setProblem(sayEnrol(done, words));
  };

  return (
    <DoorFrame title={enrol.title}>
      <p>{enrol.why}</p>
      <form
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          void go(false);
        }}
      >
        {problem !== undefined && (
          <p class="field-problem" role="alert">
            {problem}
          </p>
        )}
        <Field
          id="device"
          label={enrol.deviceName}
          hint={enrol.deviceHint}
          value={deviceName}
          onValue={setDeviceName}
        />
        <Field id="name" label={enrol.manager} value={name} onValue={setName} />
        <Field
          id="pin"
          label={enrol.managerPin}
          type="password"
          inputMode="numeric"
          wide={12}
          value={pin}
          onValue={setPin}
        />
        {newPin !== undefined && (
          <Field
            id="new-pin"
            label={newPinLabel}
            hint={newPinHint}
            type="password"
            inputMode="numeric"
            wide={12}
            value={newPin}
            onValue={setNewPin}
          />
        )}
        <Checks
          id="seen"
          label={enrol.seen}
          value={seen}
          onValue={setSeen}
          options={[
            { value: 'os-lock', label: enrol.osLock },
            { value: 'disk', label: enrol.disk },
          ]}
        />
        <div class="button-row">
          <Button kind="main" submit>
            {busy ? starting : enrol.go}
          </Button>
          {keyGone && <Button onPress={() => void go(true)}>{enrol.anew}</Button>}
        </div>
      </form>
    </DoorFrame>
  );
}
