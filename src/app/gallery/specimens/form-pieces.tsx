import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { Button } from '../../pieces/form/button.tsx';
import { Checks, Choice } from '../../pieces/form/choice.tsx';
import { DateField, TimeField } from '../../pieces/form/date-field.tsx';
import { ErrorSummary } from '../../pieces/form/error-summary.tsx';
import { Field } from '../../pieces/form/field.tsx';
import { Select } from '../../pieces/form/select.tsx';
import { applyTheme, type Theme } from '../../pieces/form/theme.ts';
import { ThemeChoice } from '../../pieces/form/theme-choice.tsx';
import { Specimen } from '../specimen.tsx';

export function FormPieces(): JSX.Element {
  const [theme, setTheme] = useState<Theme>('auto');
  return (
    <main class="gallery">
      <h1>Forms</h1>
      <Specimen name="Buttons">
        <div class="button-row">
          <Button kind="main" onPress={() => undefined}>
            Keep
          </Button>
          <Button onPress={() => undefined}>Back</Button>
          <Button icon="print" href="#print">
            Print in bag order
          </Button>
          <Button kind="quiet" onPress={() => undefined}>
            Leave it for now
          </Button>
        </div>
      </Specimen>
      <Specimen name="A form with things to put right">
        <PersonForm />
      </Specimen>
      <Specimen name="Theme choice">
        <ThemeChoice
          theme={theme}
          onTheme={(picked) => {
            setTheme(picked);
            applyTheme(document.documentElement, picked);
          }}
        />
      </Specimen>
    </main>
  );
}

type Need = 'sight' | 'hearing' | 'touch';

function PersonForm(): JSX.Element {
  const [attempt, setAttempt] = useState(0);
  const [name, setName] = useState('');
  const [born, setBorn] = useState('2033-02-14');
  const [time, setTime] = useState('10:30');
  const [way, setWay] = useState<'says' | 'shows' | ''>('');
  const [needs, setNeeds] = useState<readonly Need[]>(['touch']);
  const [room, setRoom] = useState('');
  const [note, setNote] = useState('');
  const problems =
    attempt === 0
      ? []
      : [
          ...(name === ''
            ? [
                {
                  field: 'called',
                  text: 'Called by: the name is missing. Type the name they like.',
                },
              ]
            : []),
          { field: 'born', text: 'Born: 14 February 2033 is still to come. Pick an earlier day.' },
          ...(way === '' ? [{ field: 'way', text: 'How they answer: pick one.' }] : []),
        ];
  const problem = (field: string): string | undefined =>
    problems.find((one) => one.field === field)?.text;
  return (
    <form
      class="specimen"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        setAttempt(attempt + 1);
      }}
    >
      <ErrorSummary problems={problems} attempt={attempt} />
      <Field
        id="called"
        label="Called by"
        hint="The name they like to hear."
        value={name}
        onValue={setName}
        problem={problem('called')}
      />
      <DateField id="born" label="Born" value={born} onValue={setBorn} problem={problem('born')} />
      <TimeField id="best" label="Best time of day" optional value={time} onValue={setTime} />
      <Choice
        id="way"
        label="How they answer"
        value={way}
        onValue={setWay}
        problem={problem('way')}
        options={[
          { value: 'says', label: 'Says it' },
          { value: 'shows', label: 'Shows it', hint: 'By sign, picture or touch' },
        ]}
      />
      <Checks
        id="needs"
        label="What staff must mind"
        optional
        value={needs}
        onValue={setNeeds}
        options={[
          { value: 'sight', label: 'Sight' },
          { value: 'hearing', label: 'Hearing' },
          { value: 'touch', label: 'Touch' },
        ]}
      />
      <Select
        id="room"
        label="Where they like to sit"
        optional
        value={room}
        onValue={setRoom}
        options={[
          { value: 'window', label: 'By the window' },
          { value: 'kitchen', label: 'In the kitchen' },
        ]}
      />
      <Field id="note" label="What helps" lines={3} optional value={note} onValue={setNote} />
      <Button submit kind="main">
        Keep
      </Button>
    </form>
  );
}
