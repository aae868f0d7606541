import type { JSX } from 'preact';
import { lastSeen } from '../../../care/custody/last-seen.ts';
import type { TestId } from '../../../care/ids.ts';
import type { Round } from '../../../care/rounds/round.ts';
import type { Tally } from '../../../care/rounds/tally.ts';
import { useDesk } from '../../desk/desk.ts';
import { deviceWord } from '../../desk/device-word.ts';
import { namesIn } from '../../desk/names.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Bead } from '../../pieces/frame/bead.tsx';
import { Part } from '../../pieces/page/part.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { paths, to } from '../paths.ts';

interface MissingPartProps {
  readonly round: Round;
  readonly tally: Tally;
}

/** What is not in the box: whose, how far it was, when and by whom it was last seen. */
export function MissingPart({ round, tally }: MissingPartProps): JSX.Element | null {
  const desk = useDesk();
  const words = useAllWords();
  const say = words.packing;
  const names = namesIn(desk.home, words.refusals.somebody);
  const { missing, openTurns, held } = tally;
  if (missing.length + openTurns.length + held.length === 0) return null;
  return (
    <Part title={say.missing}>
      <ul class="missing">
        {missing.map(({ id }) => (
          <li key={id}>
            <Bead state="todo" />
            <p>
              <b>{names.test(id)}</b> <LastSeenWords test={id} />
            </p>
          </li>
        ))}
        {openTurns.map((turn) => (
          <li key={turn.id}>
            <Bead state="hand" />
            <p>
              <b>{names.person(turn.person)}</b> {say.atBedside}
            </p>
            <Button
              href={to(paths.turn(round.id, turn.person))}
              label={say.goOnWith(names.person(turn.person))}
            >
              {say.goOn}
            </Button>
          </li>
        ))}
        {held.map((finding) => (
          <li key={finding.id}>
            <Bead state="look" />
            <p>
              <b>{words.now.findings[finding.kind]}</b> {say.held}
            </p>
            <Button href={to(paths.finding(finding.id))}>{say.read}</Button>
          </li>
        ))}
      </ul>
    </Part>
  );
}

function LastSeenWords({ test }: { readonly test: TestId }): JSX.Element | null {
  const desk = useDesk();
  const words = useAllWords();
  const names = namesIn(desk.home, words.refusals.somebody);
  const seen = lastSeen(desk.home, test);
  if (seen === undefined) return null;
  const { stages, lastSeen: say, onTablet } = words.packing;
  return (
    <>
      {say(stages[seen.stage], seen.at, names.staff(seen.by))},{' '}
      {onTablet(deviceWord(seen.device, desk, words))}
    </>
  );
}
