import type { JSX } from 'preact';
import { personOf } from '../../../care/people/person.ts';
import type { ToRegister } from '../../../care/results/registering.ts';
import { writeDay } from '../../../care/results/upload.ts';
import { dayOf, wallTime } from '../../../care/time.ts';
import { useDesk } from '../../desk/desk.ts';
import { CodeText } from '../../pieces/scan/code-text.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { CodeBars } from './code-bars.tsx';
import { CopyLine } from './copy-line.tsx';
import type { RegisterData } from './register-data.ts';

/** What the other form asks for, each to be copied; the code as bars to be scanned from the screen. */
export function TestDetails({
  data,
  current,
}: {
  readonly data: RegisterData;
  readonly current: ToRegister;
}): JSX.Element {
  const { home } = useDesk();
  const { registering: say } = useAllWords();
  const { zone } = home.service;
  const person = personOf(home, current.person);
  const { taken, code = '' } = current.test;
  const born = person.born === undefined ? '' : writeDay(person.born, data.dates);
  const day = taken === undefined ? '' : writeDay(dayOf(taken.at, zone), data.dates);
  const time = taken === undefined ? '' : wallTime(taken.at, zone);
  return (
    <>
      <div class="register-code">
        <CodeBars code={code} />
        <p class="field-hint">{say.barsWhy}</p>
      </div>
      <dl class="copy-list">
        <CopyLine label={say.fields.code} text={code}>
          <CodeText code={code} />
        </CopyLine>
        <CopyLine label={say.fields.name} text={person.name} />
        <CopyLine label={say.fields.born} text={born}>
          {born === '' ? say.noBorn : born}
        </CopyLine>
        {person.identifier !== '' && (
          <CopyLine label={say.fields.number} text={person.identifier} />
        )}
        <CopyLine label={say.fields.taken} text={`${day} ${time}`.trim()} />
      </dl>
    </>
  );
}
