import type { JSX } from 'preact';
import type { Verdict } from '../../../ledger/verify.ts';
import { useAllWords } from '../../words/use-all-words.ts';

interface ChainCheckProps {
  /** Undefined while it is being counted; `none` where this device keeps no chain. */
  readonly checked: Verdict | 'none' | undefined;
  /** How many of the test's own records the server has not yet. */
  readonly waiting: number;
}

/** Are the records whole? Every id and link counted again on this tablet, and what came of it. */
export function ChainCheck({ checked, waiting }: ChainCheckProps): JSX.Element {
  const { testPage } = useAllWords();
  const say = testPage.evidence.check;
  return (
    <section class="chain-check" aria-live="polite">
      <h2>{say.title}</h2>
      {checked === undefined && <p>{say.running}</p>}
      {checked === 'none' && <p>{say.none}</p>}
      {typeof checked === 'object' && <Counted verdict={checked} />}
      {waiting > 0 && checked !== 'none' && <p>{say.waiting(waiting)}</p>}
    </section>
  );
}

function Counted({ verdict }: { readonly verdict: Verdict }): JSX.Element {
  const { testPage } = useAllWords();
  const say = testPage.evidence.check;
  const { broken, exit, facts, findings, reached, unexplained } = verdict;
  if (broken !== undefined) return <p>{say.broken(broken.position)}</p>;
  return (
    <>
      <p>
        {exit === 0 ? say.whole(facts) : say.odd(facts)}{' '}
        {findings.length > 0 && say.oddities(findings.length)}{' '}
        {unexplained.length > 0 && say.missing(unexplained.length)}
      </p>
      <p>
        {say.head(reached.position)} <code>{reached.chain}</code>
      </p>
    </>
  );
}
