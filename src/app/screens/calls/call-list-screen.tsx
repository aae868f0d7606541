import type { JSX } from 'preact';
import { policyOn, testKindOf } from '../../../care/policy/in-force.ts';
import { resultsBoard } from '../../../care/results/board.ts';
import type { Turnaround } from '../../../care/results/turnaround.ts';
import { chanceBy, chanceEver, turnaroundOf, waitsOf } from '../../../care/results/turnaround.ts';
import type { Waiting } from '../../../care/results/waiting.ts';
import { elapsed, HOUR, momentOf } from '../../../care/time.ts';
import { todayOf, useDesk } from '../../desk/desk.ts';
import { namesIn } from '../../desk/names.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Bead } from '../../pieces/frame/bead.tsx';
import { Part } from '../../pieces/page/part.tsx';
import { CodeText } from '../../pieces/scan/code-text.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { PageHead } from '../page-head.tsx';
import { paths, to } from '../paths.ts';
import { LaboratoryLine } from '../results/laboratory-line.tsx';
import { HowLong } from './how-long.tsx';
import '../results/results.css';

/** Whom to ring, in which order, with what to say at hand, and how likely each is to come by itself. */
export function CallListScreen(): JSX.Element {
  const desk = useDesk();
  const { calls: say } = useAllWords();
  const now = desk.now();
  const { policy } = policyOn(desk.home, todayOf(desk));
  const { late, waiting } = resultsBoard(desk.home, now);
  const waits = waitsOf(desk.home, now);
  const prior = policy.interpretation?.waits.value;
  const turnaround = turnaroundOf(waits, prior);
  const kinds = [
    ...new Set([...late, ...waiting].map(({ swab }) => swab.round?.planned.data.test)),
  ];
  // Whoever was told "ring again at eight" is not first in the list at seven.
  const order = [...late].sort((a, b) =>
    (a.quietUntil ?? a.dueBy) < (b.quietUntil ?? b.dueBy) ? -1 : 1,
  );
  return (
    <>
      <PageHead title={say.title}>
        {kinds.flatMap((id) => {
          const kind = testKindOf(policy, id ?? '');
          return kind === undefined ? [] : <LaboratoryLine key={id} kind={kind} />;
        })}
      </PageHead>
      <Part title={say.late}>
        {late.length === 0 ? <p>{say.none}</p> : <Calls list={order} turnaround={turnaround} />}
      </Part>
      {waiting.length > 0 && (
        <Part title={say.soon}>
          <Calls list={waiting} turnaround={turnaround} />
        </Part>
      )}
      <HowLong waits={waits} turnaround={turnaround} prior={prior} />
      <p class="field-hint">{say.caution}</p>
    </>
  );
}

function Calls({
  list,
  turnaround,
}: {
  readonly list: readonly Waiting[];
  readonly turnaround: Turnaround | undefined;
}): JSX.Element {
  const desk = useDesk();
  const words = useAllWords();
  const { calls: say } = words;
  const now = desk.now();
  const names = namesIn(desk.home, words.refusals.somebody);
  return (
    <ul class="result-list">
      {list.map((waiting) => {
        const { swab, since, dueBy, late, chased, quietUntil } = waiting;
        const last = chased.at(-1);
        const name = names.person(swab.turn.person);
        const quiet = quietUntil !== undefined && now < quietUntil;
        return (
          <li key={swab.test.id}>
            <Bead state={late && !quiet ? 'look' : 'hand'} />
            <div>
              <p class="result-who">{name}</p>
              <p>
                {say.code} <CodeText code={swab.test.code ?? ''} />
              </p>
              <p>
                {say.since(Math.floor(elapsed(since, now) / HOUR))} {say.due(dueBy)}
              </p>
              <p>
                {last !== undefined && say.lastCall(names.staff(last.by), last.at)}{' '}
                {quietUntil !== undefined && say.nextCall(quietUntil)}
              </p>
              {turnaround !== undefined && <Chances {...{ waiting, turnaround, quiet }} />}
            </div>
            <Button
              href={to(paths.chase(swab.test.id))}
              label={words.parts.about(words.results.ring, name)}
            >
              {words.results.ring}
            </Button>
          </li>
        );
      })}
    </ul>
  );
}

/** The chance that it comes by itself: tonight, within the rule, at all. */
function Chances({
  waiting: { since, dueBy },
  turnaround,
  quiet,
}: {
  readonly waiting: Waiting;
  readonly turnaround: Turnaround;
  /** Somebody was told when to ring again, and it is not yet time. */
  readonly quiet: boolean;
}): JSX.Element {
  const desk = useDesk();
  const { calls: say } = useAllWords();
  const now = desk.now();
  const age = elapsed(since, now) / HOUR;
  const tonight = momentOf(todayOf(desk), '22:00', desk.home.service.zone);
  const limit = Math.round(elapsed(since, dueBy) / HOUR);
  const [soon, by, ever] = [
    chanceBy(turnaround, age, elapsed(since, tonight) / HOUR),
    chanceBy(turnaround, age, limit),
    chanceEver(turnaround, age),
  ];
  if (soon === undefined || by === undefined || ever === undefined) {
    return (
      <p>
        {say.noIdea} {!quiet && say.ringNow}
      </p>
    );
  }
  const range = now < dueBy ? by : soon;
  return (
    <p>
      <b>{say.chances}.</b> {now < tonight && say.tonight(soon.is, soon.least)}{' '}
      {now < dueBy && say.byLimit(limit, by.is, by.least)} {say.ever(ever.is)}{' '}
      {range.lower !== undefined && range.upper !== undefined && (
        <span class="soft">{say.range(range.lower, range.upper)}</span>
      )}
    </p>
  );
}
