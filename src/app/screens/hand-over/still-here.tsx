import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { Round } from '../../../care/rounds/round.ts';
import type { Uncollected } from '../../../care/rounds/uncollected.ts';
import { keepsUntil } from '../../../care/rounds/uncollected.ts';
import { elapsed, HOUR } from '../../../care/time.ts';
import { courierMissed } from '../../../procedures/plan-round.ts';
import { useDesk } from '../../desk/desk.ts';
import { namesIn } from '../../desk/names.ts';
import { useAct } from '../../desk/use-act.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { Part } from '../../pieces/page/part.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { BookAgain } from './book-again.tsx';

interface StillHereProps {
  readonly round: Round;
  readonly here: Uncollected;
}

/** What waits, how long it keeps by its kit's limit and where; and what follows if nobody comes. */
export function StillHere({ round, here }: StillHereProps): JSX.Element {
  const desk = useDesk();
  const words = useAllWords();
  const say = words.handing;
  const { act, problem } = useAct();
  const [booking, setBooking] = useState(false);
  const now = desk.now();
  const { storage } = here.kit;
  const missed = round.missed.filter(({ data }) => data.due === round.courier);
  const tooOld = here.tests.filter(
    ({ taken }) => taken !== undefined && keepsUntil(taken.at, here.kit) < now,
  );
  const names = namesIn(desk.home, words.refusals.somebody);
  return (
    <Part title={say.here}>
      <p>{say.oldest(here.tests[0]?.taken?.at ?? round.courier)}</p>
      {tooOld.length > 0 ? (
        <Notice kind="stop" title={say.tooOld(here.keepsUntil)}>
          {say.tooOldHow} {say.dueAgain(tooOld.map(({ id }) => names.test(id)))}
        </Notice>
      ) : (
        <>
          <p>
            <b>
              {say.keeps(
                here.keepsUntil,
                Math.floor(elapsed(now, here.keepsUntil) / HOUR),
                storage.hours,
              )}
            </b>{' '}
            {say.where(words.parts.degrees(storage.minCelsius, storage.maxCelsius))}
          </p>
          <p class="field-hint">{say.leaflet}</p>
        </>
      )}
      {missed.map((fact) => (
        <Notice key={fact.id} kind="look" title={say.missedAt(fact.data.due)} />
      ))}
      <div role="alert">{problem !== undefined && <Notice kind="stop" title={problem} />}</div>
      {missed.length > 0 || booking ? (
        <BookAgain round={round} here={here} />
      ) : (
        <div>
          <Button
            icon="courier"
            onPress={() =>
              void act((home) => courierMissed(home, round.id)).then((kept) =>
                setBooking(kept !== undefined),
              )
            }
          >
            {say.missed}
          </Button>
        </div>
      )}
    </Part>
  );
}
