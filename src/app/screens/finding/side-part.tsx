import type { JSX } from 'preact';
import type { Fact } from '../../../care/catalogue.ts';
import { testOf } from '../../../care/custody/test.ts';
import type { Account } from '../../../care/quality/verdicts.ts';
import { useDesk } from '../../desk/desk.ts';
import { namesIn } from '../../desk/names.ts';
import { Button } from '../../pieces/form/button.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { paths, to } from '../paths.ts';
import { TestWire } from '../test/test-wire.tsx';
import { ToldLine } from '../test/told-line.tsx';

interface SidePartProps {
  readonly account: Account;
  readonly title: string;
}

/** One side of it: whose test, how far it came, and the records that say so, by whom and on which tablet. */
export function SidePart({ account, title }: SidePartProps): JSX.Element {
  const { home } = useDesk();
  const words = useAllWords();
  const say = words.findings;
  const names = namesIn(home, words.refusals.somebody);
  const { test, facts } = account;
  const name = test === undefined ? undefined : names.test(test);
  return (
    <li>
      <h3>{name === undefined ? title : `${title}: ${name}`}</h3>
      {test !== undefined && <TestWire test={testOf(home, test)} size="small" />}
      <ol class="told">
        {facts.toSorted(inTime).map((fact) => (
          <ToldLine key={fact.id} told={{ fact, replaced: false }} />
        ))}
      </ol>
      {test !== undefined && name !== undefined && (
        <Button
          kind="quiet"
          href={to(paths.test(test))}
          label={say.testOf(name, facts[0]?.at ?? '')}
        >
          {say.test}
        </Button>
      )}
    </li>
  );
}

export const inTime = (a: Fact, b: Fact): number =>
  a.at < b.at ? -1 : a.at > b.at ? 1 : a.seq - b.seq;
