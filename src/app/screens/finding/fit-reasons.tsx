import type { JSX } from 'preact';
import type { Finding } from '../../../care/quality/finding.ts';
import { misfitOf } from '../../../care/quality/of-fit.ts';
import type { Misfit } from '../../../care/results/fit.ts';
import { useDesk } from '../../desk/desk.ts';
import { namesIn } from '../../desk/names.ts';
import type { AllWords } from '../../words/en-all.ts';
import { useAllWords } from '../../words/use-all-words.ts';

/** Why a result was challenged, with the odds: for the page on which a senior decides. */
export function FitReasons({ found }: { readonly found: Finding }): JSX.Element | null {
  const desk = useDesk();
  const words = useAllWords();
  const misfit = misfitOf(desk.home, found);
  if (misfit === undefined) return null;
  const names = namesIn(desk.home, words.refusals.somebody);
  return (
    <section aria-label={words.fit.title}>
      <p>{whySaid(misfit, words, names.person)}</p>
      <p>
        <b>{words.fit.odds(misfit.odds)}</b> {words.fit.oddsNote}
      </p>
      <p>{words.fit.meanwhile}</p>
      <p>{words.fit.ask}</p>
    </section>
  );
}

type Named = ReturnType<typeof namesIn>['person'];

export function whySaid(
  { kind, doubtful, against }: Misfit,
  { fit }: AllWords,
  name: Named,
): string {
  const [first, second] = doubtful;
  const [before, later] = against;
  switch (kind) {
    case 'positive-again':
      return fit.why[kind](name(first?.person), before?.on ?? '');
    case 'negative-between':
      return fit.why[kind](name(first?.person), before?.on ?? '', later?.on ?? '');
    case 'crossed': {
      const [negative, positive] =
        first?.result.data.outcome === 'negative' ? [first, second] : [second, first];
      return fit.why[kind](name(negative?.person), name(positive?.person));
    }
  }
}
