import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { inBox } from '../../../care/rounds/in-box.ts';
import type { Progress } from '../../../care/rounds/progress.ts';
import type { Round } from '../../../care/rounds/round.ts';
import { talliesOnceShut } from '../../../care/rounds/tally.ts';
import { momentOf } from '../../../care/time.ts';
import { boxToShut, closeBox, closeRound, splitRound } from '../../../procedures/pack.ts';
import { useDesk } from '../../desk/desk.ts';
import { namesIn } from '../../desk/names.ts';
import { useAct } from '../../desk/use-act.ts';
import { useGoOn } from '../../keeping/use-go-on.ts';
import { Button } from '../../pieces/form/button.tsx';
import { TimeField } from '../../pieces/form/date-field.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { Part } from '../../pieces/page/part.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { paths } from '../paths.ts';

interface CourierEarlyProps {
  readonly round: Round;
  readonly progress: Progress;
  readonly onBack: () => void;
}

/** What is in the box goes now; who has not been swabbed moves to a second round with its own courier. */
export function CourierEarly({ round, progress, onBack }: CourierEarlyProps): JSX.Element {
  const { home } = useDesk();
  const words = useAllWords();
  const say = words.packing;
  const names = namesIn(home, words.refusals.somebody);
  const { act, problem } = useAct();
  const go = useGoOn();
  const [time, setTime] = useState('');
  const [missingTime, setMissingTime] = useState(false);
  const { tally, waiting } = progress;
  const box = boxToShut(home, round);
  const bags = box === undefined ? 0 : inBox(home, box.id).length;

  const send = async (): Promise<void> => {
    setMissingTime(waiting.length > 0 && time === '');
    if (waiting.length > 0) {
      if (time === '') return;
      const courier = momentOf(round.planned.data.day, time, home.service.zone);
      const split = await act((now, doing) => splitRound(now, { round: round.id, courier }, doing));
      if (split === undefined) return;
    }
    const shut = await act((now) => closeBox(now, { round: round.id, wiped: true }));
    if (shut === undefined) return;
    // Where something is still open the round stays open: it goes with a later box.
    if (talliesOnceShut(tally, box)) await act((now) => closeRound(now, round.id));
    go(paths.handOver(round.id));
  };

  return (
    <Part title={say.early}>
      <p>{say.earlyLead}</p>
      <p>
        <b>{say.goesNow(bags)}</b>
      </p>
      {tally.missing.length > 0 && (
        <Notice kind="look" title={say.scanFirst(tally.missing.map(({ id }) => names.test(id)))} />
      )}
      {tally.openTurns.length > 0 && (
        <p>{say.staysOpen(tally.openTurns.map(({ person }) => names.person(person)))}</p>
      )}
      {waiting.length === 0 ? (
        <p>{say.movesNobody}</p>
      ) : (
        <>
          <p>{say.moves(waiting.map(names.person))}</p>
          <TimeField
            id="next-courier"
            label={say.nextCourier}
            value={time}
            onValue={setTime}
            problem={missingTime && time === '' ? say.fillCourier : undefined}
          />
        </>
      )}
      <ol class="shut-steps">
        {(['tube', 'bag', 'outer', 'wipe'] as const).map((step) => (
          <li key={step}>{say.shutSteps[step]}</li>
        ))}
      </ol>
      <div role="alert">{problem !== undefined && <Notice kind="stop" title={problem} />}</div>
      <div class="button-row">
        <Button kind="main" icon="courier" onPress={() => void send()}>
          {say.send}
        </Button>
        <Button icon="back" onPress={onBack}>
          {words.prepare.back}
        </Button>
      </div>
    </Part>
  );
}
