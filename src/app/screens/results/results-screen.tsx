import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { resultsBoard } from '../../../care/results/board.ts';
import { tray } from '../../../care/results/tray.ts';
import { useDesk } from '../../desk/desk.ts';
import { Button } from '../../pieces/form/button.tsx';
import { EmptyState } from '../../pieces/page/empty-state.tsx';
import { Part } from '../../pieces/page/part.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { PageHead } from '../page-head.tsx';
import { paths, to } from '../paths.ts';
import { LateList } from './late-list.tsx';
import { SwabList } from './swab-list.tsx';
import { WaitingTable } from './waiting-table.tsx';
import './results.css';

/** How many settled results are shown until somebody asks for more. */
const FIRST = 15;

/** Every swab of the last months by where its result stands; what is late and what waits for hands first. */
export function ResultsScreen(): JSX.Element {
  const desk = useDesk();
  const { results: say, takingIn, calls, meaning } = useAllWords();
  const [shown, setShown] = useState(FIRST);
  const waitingReports = tray(desk.home).length;
  const board = resultsBoard(desk.home, desk.now());
  const { late, toAct, held, waiting, known } = board;
  const none = [late, toAct, held, waiting, known].every((part) => part.length === 0);
  return (
    <>
      <PageHead title={say.title} />
      <div class="button-row">
        <Button kind="main" icon="scan" href={to(paths.newResult)}>
          {say.enter}
        </Button>
        <Button href={to(paths.takeIn)}>{takingIn.open}</Button>
        {late.length + waiting.length > 0 && (
          <Button icon="clock" href={to(paths.callList)}>
            {calls.open}
          </Button>
        )}
        <Button href={to(paths.houseChance)}>{meaning.houseOpen}</Button>
        {waitingReports > 0 && (
          <Button icon="look" href={to(paths.tray)}>
            {takingIn.trayCount(waitingReports)}
          </Button>
        )}
        <Button icon="look" href={to(paths.findings)}>
          {say.findings}
        </Button>
      </div>
      {none && <EmptyState title={say.none} />}
      {late.length > 0 && (
        <Part title={say.parts.late}>
          <LateList late={late} />
        </Part>
      )}
      {toAct.length > 0 && (
        <Part title={say.parts.toAct}>
          <SwabList swabs={toAct} lead="act" />
        </Part>
      )}
      {held.length > 0 && (
        <Part title={say.parts.held}>
          <SwabList swabs={held} lead="test" />
        </Part>
      )}
      {waiting.length > 0 && (
        <Part title={say.parts.waiting}>
          <WaitingTable waiting={waiting} />
        </Part>
      )}
      {known.length > 0 && (
        <Part title={say.parts.known}>
          <SwabList swabs={known.slice(0, shown)} lead="test" />
          {known.length > shown && (
            <div>
              <Button onPress={() => setShown(shown + FIRST)}>{say.older}</Button>
            </div>
          )}
        </Part>
      )}
    </>
  );
}
