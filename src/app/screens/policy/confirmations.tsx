import type { JSX } from 'preact';
import type { FactOf } from '../../../care/catalogue.ts';
import { textOf } from '../../../care/policy/in-force.ts';
import { historyOf } from '../../../care/record/history.ts';
import { useDesk } from '../../desk/desk.ts';
import { namesIn } from '../../desk/names.ts';
import { Part } from '../../pieces/page/part.tsx';
import { useAllWords } from '../../words/use-all-words.ts';

/** Which version held from which day, who said so and when. */
export function Confirmations(): JSX.Element | null {
  const desk = useDesk();
  const { policy: say, history, refusals } = useAllWords();
  const names = namesIn(desk.home, refusals.somebody);
  const entries = historyOf(desk.home, 'policy', 'confirmed').flatMap(({ fact, replacedBy }) =>
    fact.kind === 'policy.confirmed' ? [{ fact, gone: replacedBy.length > 0 }] : [],
  );
  if (entries.length === 0) return null;
  return (
    <Part title={say.history}>
      <ul class="confirmations">
        {entries.map(({ fact, gone }) => (
          <li key={fact.id}>
            {nameOf(fact)} {gone && <span class="history-gone">{say.noLonger}</span>}
            <p class="soft">{history.byAt(names.staff(fact.by), fact.at)}</p>
          </li>
        ))}
      </ul>
    </Part>
  );

  function nameOf(fact: FactOf<'policy.confirmed'>): string {
    return say.confirmation(
      textOf(desk.home, fact)?.title ?? fact.data.policy,
      fact.data.version,
      fact.data.from,
    );
  }
}
