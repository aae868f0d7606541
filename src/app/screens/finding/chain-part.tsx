import type { JSX } from 'preact';
import { testOf } from '../../../care/custody/test.ts';
import type { FactId, TestId } from '../../../care/ids.ts';
import type { Finding as ChainFinding } from '../../../ledger/findings/finding.ts';
import type { Desk } from '../../desk/desk.ts';
import { useDesk } from '../../desk/desk.ts';
import { deviceWord } from '../../desk/device-word.ts';
import { namesIn } from '../../desk/names.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Bead } from '../../pieces/frame/bead.tsx';
import { Part } from '../../pieces/page/part.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { paths, to } from '../paths.ts';

/** What the tablets' own lines of records show: nobody settles these, something is done about them. */
export function ChainPart(): JSX.Element {
  const desk = useDesk();
  const words = useAllWords();
  const say = words.findings;
  const found = desk.chainFindings();
  return (
    <Part title={say.chainPart}>
      {found.length === 0 && <p>{say.chainFine}</p>}
      <ul class="finding-list">
        {found.map((each) => (
          <ChainLine key={each.id} found={each} />
        ))}
      </ul>
    </Part>
  );
}

function ChainLine({ found }: { readonly found: ChainFinding }): JSX.Element {
  const desk = useDesk();
  const words = useAllWords();
  const say = words.findings;
  const names = namesIn(desk.home, words.refusals.somebody);
  const test = testIn(desk, found);
  const device = deviceOf(desk, found);
  return (
    <li>
      <Bead state={found.kind === 'carried' ? 'done' : 'look'} />
      <div>
        <h3>{say.chain[found.kind]}</h3>
        <p>
          {device !== undefined &&
            `${say.chainWhere(deviceWord(device, desk, words), say.records(found.members.length))} `}
          {say.chainHow[found.kind]}
        </p>
      </div>
      {test !== undefined && (
        <Button
          href={to(paths.test(test))}
          label={say.openWhat(say.chain[found.kind], names.test(test))}
        >
          {say.open}
        </Button>
      )}
    </li>
  );
}

const factIn = (desk: Desk, { members }: ChainFinding) => {
  for (const id of members) {
    const fact = desk.home.known.get(id as string as FactId);
    if (fact !== undefined) return fact;
  }
  return undefined;
};

/** The first test among the records concerned, to have a look at. */
function testIn(desk: Desk, found: ChainFinding): TestId | undefined {
  const fact = factIn(desk, found);
  // In a plan or a decision `test` is the kind of test: only a single test has facts of its own.
  const test = fact !== undefined && 'test' in fact.data ? (fact.data.test as TestId) : undefined;
  return test !== undefined && testOf(desk.home, test).opened !== undefined ? test : undefined;
}

function deviceOf(desk: Desk, found: ChainFinding): string | undefined {
  const [device, seq] = found.key.split('/');
  return seq === undefined ? factIn(desk, found)?.device : device;
}
