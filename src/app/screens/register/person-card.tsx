import type { JSX } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import type { TestId } from '../../../care/ids.ts';
import { personOf } from '../../../care/people/person.ts';
import { useDesk } from '../../desk/desk.ts';
import { namesIn } from '../../desk/names.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { useScanner } from '../../pieces/scan/use-scanner.ts';
import { useAllWords } from '../../words/use-all-words.ts';
import { hasMoved } from '../arrivals.ts';
import { paths, to } from '../paths.ts';
import { CouldNot } from './could-not.tsx';
import { ReferenceForm } from './reference-form.tsx';
import type { RegisterData } from './register-data.ts';
import { nextOpen } from './register-data.ts';
import { TestDetails } from './test-details.tsx';

interface PersonCardProps {
  readonly data: RegisterData;
  readonly at: number;
  readonly onGo: (test: TestId | undefined) => void;
}

/** One bag and whose it is: all that the other form asks for, and the reference that comes back. */
export function PersonCard({ data, at, onGo }: PersonCardProps): JSX.Element | null {
  const { home } = useDesk();
  const words = useAllWords();
  const say = words.registering;
  const names = namesIn(home, words.refusals.somebody);
  const heading = useRef<HTMLHeadingElement>(null);
  const [scanned, setScanned] = useState('');
  const [bag, setBag] = useState<string | undefined>(undefined);
  const { list } = data;
  const current = list[at];

  useEffect(() => {
    if (hasMoved() || at > 0) heading.current?.focus({ preventScroll: true });
  }, []);

  useScanner({
    onScan: (code) => {
      const other = list.find(({ test }) => test.codes.some((each) => each === code));
      if (other === undefined) setScanned(code);
      else if (other.test.id === current?.test.id) setBag(say.rightBag(names.person(other.person)));
      else onGo(other.test.id);
    },
  });

  if (current === undefined) return null;
  const { registered, failures } = current.registration;
  const onward = (): void => onGo(nextOpen(list, current.test.id));
  const failed = failures.at(-1);
  return (
    <article class="register-card">
      <header>
        <p>{say.bag(at + 1, list.length)}</p>
        <h2 ref={heading} tabIndex={-1}>
          {personOf(home, current.person).name || words.refusals.somebody}
        </h2>
        <p role="status">{bag ?? say.checkBag}</p>
      </header>
      <TestDetails data={data} current={current} />
      {current.held.map((finding) => (
        <Notice
          key={finding.id}
          kind="look"
          title={say.held}
          action={<Button href={to(paths.finding(finding.id))}>{words.packing.read}</Button>}
        />
      ))}
      {registered === undefined && failed !== undefined && (
        <Notice
          kind="look"
          title={say.failed(
            say.why[failed.data.why],
            failed.data.nextTry,
            names.staff(failed.data.who),
          )}
        />
      )}
      {current.held.length === 0 && (
        <ReferenceForm
          current={current}
          last={nextOpen(list, current.test.id) === undefined}
          scanned={scanned}
          onDone={onward}
        />
      )}
      {registered === undefined && current.held.length === 0 && (
        <CouldNot data={data} current={current} onDone={onward} />
      )}
      <Around data={data} at={at} onGo={onGo} />
    </article>
  );
}

function Around({ data, at, onGo }: PersonCardProps): JSX.Element {
  const { registering: say } = useAllWords();
  const [before, after] = [data.list[at - 1], data.list[at + 1]];
  return (
    <div class="button-row">
      {before !== undefined && (
        <Button icon="back" onPress={() => onGo(before.test.id)}>
          {say.previous}
        </Button>
      )}
      {after !== undefined && (
        <Button icon="next" onPress={() => onGo(after.test.id)}>
          {say.next}
        </Button>
      )}
    </div>
  );
}
