import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { inBox } from '../../../care/rounds/in-box.ts';
import type { Progress } from '../../../care/rounds/progress.ts';
import type { Round } from '../../../care/rounds/round.ts';
import { talliesOnceShut } from '../../../care/rounds/tally.ts';
import { boxToShut, closeBox, closeRound } from '../../../procedures/pack.ts';
import { useDesk } from '../../desk/desk.ts';
import { namesIn } from '../../desk/names.ts';
import { useAct } from '../../desk/use-act.ts';
import { useGoOn } from '../../keeping/use-go-on.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { Part } from '../../pieces/page/part.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { paths, to } from '../paths.ts';

interface ShutBoxProps {
  readonly round: Round;
  readonly progress: Progress;
}

/** The four things that are looked at before the box is shut, and one press that says they were. */
export function ShutBox({ round, progress }: ShutBoxProps): JSX.Element {
  const { home } = useDesk();
  const words = useAllWords();
  const say = words.packing;
  const { act, problem, clear } = useAct();
  const [refused, setRefused] = useState(false);
  const go = useGoOn();
  const { tally, waiting } = progress;
  const names = namesIn(home, words.refusals.somebody);
  const box = boxToShut(home, round);
  const again = box?.closed !== undefined;
  const bags = box === undefined ? 0 : inBox(home, box.id).length;
  const shuts = bags > 0 || again;
  const tallies = talliesOnceShut(tally, box);

  const shut = async (): Promise<boolean> => {
    if (!shuts) return true;
    return (await act((now) => closeBox(now, { round: round.id, wiped: true }))) !== undefined;
  };
  const shutAndClose = async (): Promise<void> => {
    // Asked first: a box that was shut on a missing bag would have to be opened again.
    if (!tallies) {
      setRefused(true);
      await act((now) => closeRound(now, round.id));
      return;
    }
    if (!(await shut())) return;
    const closed = await act((now) => closeRound(now, round.id));
    if (closed !== undefined && tally.packed.length > 0) go(paths.handOver(round.id));
  };

  const shutBoxes = round.boxes.filter((each) => each.closed !== undefined);
  return (
    <Part title={say.shut}>
      {shutBoxes.map((each) => (
        <p key={each.id}>
          {each.closed !== undefined &&
            say.boxShut(each.closed.data.members.length, each.closed.at)}
        </p>
      ))}
      {again && (
        <Notice kind="look" title={say.boxChanged(bags)}>
          {say.boxChangedHow}
        </Notice>
      )}
      {shuts && (
        <ol class="shut-steps">
          {(['tube', 'bag', 'outer', 'wipe'] as const).map((step) => (
            <li key={step}>{say.shutSteps[step]}</li>
          ))}
        </ol>
      )}
      {tally.opened.length === 0 && <p>{say.nothingPacked}</p>}
      {waiting.length > 0 && (
        <Notice
          kind="look"
          title={say.notSwabbed(waiting.map(names.person))}
          action={
            <Button href={to(paths.editRound(round.id))} icon="note">
              {words.rounds.edit}
            </Button>
          }
        >
          {say.notSwabbedHow}
        </Notice>
      )}
      <div role="alert">{problem !== undefined && <Notice kind="stop" title={problem} />}</div>
      <div class="button-stack">
        <Button kind="main" icon={shuts ? 'bag' : 'tick'} onPress={() => void shutAndClose()}>
          {shuts ? say.shutAndClose : say.closeRound}
        </Button>
        {refused && !tallies && shuts && (
          <Button
            onPress={() => {
              clear();
              void shut();
            }}
          >
            {say.shutOnly}
          </Button>
        )}
      </div>
    </Part>
  );
}
