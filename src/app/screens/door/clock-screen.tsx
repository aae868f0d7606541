import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { Day } from '../../../care/time.ts';
import { dayOf, momentOf, wallTime } from '../../../care/time.ts';
import { Button } from '../../pieces/form/button.tsx';
import { DateField, TimeField } from '../../pieces/form/date-field.tsx';
import type { Tablet } from '../../tablet/tablet.ts';
import { useWords } from '../../words/use-words.ts';
import { DoorFrame } from './door-frame.tsx';

/** Before the first fact, where the clock may be wrong: is it right, and if not, what is the time? */
export function ClockScreen({
  tablet,
  zone,
}: {
  readonly tablet: Tablet;
  readonly zone: string;
}): JSX.Element {
  const { door } = useWords();
  const now = tablet.now();
  const [setting, setSetting] = useState(false);
  const [day, setDay] = useState<string>(dayOf(now, zone));
  const [time, setTime] = useState(wallTime(now, zone));
  return (
    <DoorFrame title={door.clock.title}>
      <p>
        <b>{door.clock.ask(now)}</b>
      </p>
      <p>{door.clock.why}</p>
      {setting ? (
        <>
          <DateField id="clock-day" label={door.clock.day} value={day} onValue={setDay} />
          <TimeField id="clock-time" label={door.clock.time} value={time} onValue={setTime} />
          <Button
            kind="main"
            onPress={() => {
              if (day !== '' && time !== '')
                void tablet.answerClock(momentOf(day as Day, time, zone));
            }}
          >
            {door.clock.keep}
          </Button>
        </>
      ) : (
        <div class="button-row">
          <Button kind="main" onPress={() => void tablet.answerClock('right')}>
            {door.clock.right}
          </Button>
          <Button onPress={() => setSetting(true)}>{door.clock.set}</Button>
        </div>
      )}
    </DoorFrame>
  );
}
