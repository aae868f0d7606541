import type { JSX } from 'preact';
import { reserve, usableKits } from '../../../care/supplies/stock.ts';
import type { Day } from '../../../care/time.ts';
import { useDesk } from '../../desk/desk.ts';
import { Notice } from '../../pieces/list/notice.tsx';
import { Part } from '../../pieces/page/part.tsx';
import { useAllWords } from '../../words/use-all-words.ts';

/** One kit a person, those that end soonest first, and how many are left should one fail. */
export function KitsPart({
  kitKind,
  day,
  people,
}: {
  readonly kitKind: string;
  readonly day: Day;
  readonly people: number;
}): JSX.Element {
  const { home } = useDesk();
  const { prepare: say } = useAllWords();
  const { reserved, missing } = reserve(home, kitKind, { on: day, count: people });
  const spare = usableKits(home, kitKind, day) - people;
  return (
    <Part title={say.kits}>
      {missing > 0 && <Notice kind="look" title={say.kitsMissing(missing)} />}
      <ul class="prepare-not">
        {reserved.map(({ lot, count }) => (
          <li key={lot.lot}>{say.kitsTaken(count, lot.lot, lot.expires)}</li>
        ))}
      </ul>
      <p class="order-why">
        {reserved.length > 1 && `${say.soonest} `}
        {missing === 0 && say.kitsSpare(spare)}
      </p>
    </Part>
  );
}
