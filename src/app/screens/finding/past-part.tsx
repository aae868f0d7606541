import type { JSX } from 'preact';
import { factsIn, ofKind, replacedBy } from '../../../care/home.ts';
import type { Finding } from '../../../care/quality/finding.ts';
import { useDesk } from '../../desk/desk.ts';
import { Part } from '../../pieces/page/part.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { ToldLine } from '../test/told-line.tsx';

/** Every settlement there has been, also those that another one has replaced. */
export function PastPart({ found }: { readonly found: Finding }): JSX.Element | null {
  const { home } = useDesk();
  const { findings: say } = useAllWords();
  const facts = factsIn(home, 'finding', found.id);
  const settlements = ofKind(facts, 'settled');
  if (settlements.length === 0) return null;
  const replaced = replacedBy(facts);
  return (
    <Part title={say.past}>
      <ol class="told">
        {settlements.map((fact) => (
          <ToldLine key={fact.id} told={{ fact, replaced: replaced.has(fact.id) }} />
        ))}
      </ol>
    </Part>
  );
}
