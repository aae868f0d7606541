import type { JSX } from 'preact';
import { tray } from '../../../care/results/tray.ts';
import { useDesk } from '../../desk/desk.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Bead } from '../../pieces/frame/bead.tsx';
import { EmptyState } from '../../pieces/page/empty-state.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { PageHead } from '../page-head.tsx';
import { paths, to } from '../paths.ts';
import '../results/results.css';

/** Reports that were put on nobody's record, each with why, oldest first. */
export function TrayScreen(): JSX.Element {
  const { home } = useDesk();
  const words = useAllWords();
  const { takingIn: say, now } = words;
  const waiting = tray(home);
  return (
    <>
      <PageHead title={now.tray}>
        <p>{say.heldWhy}</p>
      </PageHead>
      {waiting.length === 0 && (
        <EmptyState
          title={say.trayNone}
          action={<Button href={to(paths.results)}>{words.results.title}</Button>}
        />
      )}
      <ul class="result-list">
        {waiting.map(({ received, match }) => {
          const { data } = received;
          const outcome =
            data.outcome === undefined ? say.unclear : words.results.picks[data.outcome];
          const line = say.codeLine(data.codes[0] ?? say.noCode, outcome);
          return (
            <li key={data.report}>
              <Bead state="look" />
              <div>
                <p class="result-who">{line}</p>
                <p>{match.reasons.map((reason) => now.trayReasons[reason]).join(' ')}</p>
                <p class="soft">{say.came(say.sources[data.source], received.at)}</p>
              </div>
              <Button
                href={to(paths.report(data.report))}
                label={words.parts.about(say.look, line)}
              >
                {say.look}
              </Button>
            </li>
          );
        })}
      </ul>
    </>
  );
}
