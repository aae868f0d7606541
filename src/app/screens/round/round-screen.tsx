import type { JSX } from 'preact';
import type { PersonId, RoundId } from '../../../care/ids.ts';
import { personOf } from '../../../care/people/person.ts';
import type { WireOf } from '../../../care/rounds/frame.ts';
import { beadNames, frameOf } from '../../../care/rounds/frame.ts';
import type { Round } from '../../../care/rounds/round.ts';
import { roundOf } from '../../../care/rounds/round.ts';
import { tallyOf } from '../../../care/rounds/tally.ts';
import { after, MINUTE } from '../../../care/time.ts';
import { useDesk } from '../../desk/desk.ts';
import { namesIn } from '../../desk/names.ts';
import { Button } from '../../pieces/form/button.tsx';
import { BeadKey } from '../../pieces/frame/bead-key.tsx';
import { TallyFrame } from '../../pieces/frame/tally-frame.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { useWords } from '../../words/use-words.ts';
import { EmptyPage } from '../empty-page.tsx';
import { PageHead } from '../page-head.tsx';
import { paths, to } from '../paths.ts';
import { rowsOf } from './round-rows.ts';

/** A round as its tally frame, and the one thing to do next. */
export function RoundScreen({ round: id }: { readonly round: RoundId }): JSX.Element {
  const desk = useDesk();
  const words = useWords();
  const round = roundOf(desk.home, id);
  if (round === undefined) return <EmptyPage title={words.refusals.unknownPerson} />;
  const say = words.rounds;
  const wires = frameOf(desk.home, round);
  const names = namesIn(desk.home, words.refusals.somebody);
  const { day, swabber, recorder, packMinutes } = round.planned.data;
  const tally = tallyOf(desk.home, round);
  const closing = round.closings.at(-1);
  return (
    <>
      <PageHead title={say.of(day)}>
        <p>
          {say.line(names.staff(swabber), names.staff(recorder), round.people.length)}{' '}
          {say.courier(round.courier, after(round.courier, -packMinutes * MINUTE))}{' '}
          {say.counts(tally.opened.length, tally.packed.length, tally.spoiled.length)}
        </p>
      </PageHead>
      {closing !== undefined && (
        <Notice kind="note" title={say.closed}>
          {say.closedOn(closing.at)}
        </Notice>
      )}
      <TallyFrame
        caption={say.frame(day)}
        steps={beadNames.map((key) => ({ key, label: words.frame.steps[key] }))}
        rows={rowsOf(desk, words, { round, wires })}
      />
      <NextThing round={round} wires={wires} />
      <BeadKey />
    </>
  );
}

function NextThing({
  round,
  wires,
}: {
  readonly round: Round;
  readonly wires: readonly WireOf[];
}): JSX.Element {
  const desk = useDesk();
  const { rounds: say, planner } = useWords();
  const called = (person: PersonId) => personOf(desk.home, person).called;
  const inTurn = wires.find((wire) => wire.so === 'in-turn');
  const waiting = wires.find((wire) => wire.so === 'waiting');
  const person = (inTurn ?? waiting)?.person;
  const closed = round.closings.length > 0;
  return (
    <div class="button-row">
      {person !== undefined && !closed && (
        <Button kind="main" href={to(paths.turn(round.id, person))}>
          {inTurn !== undefined ? say.goOn(called(person)) : say.start(called(person))}
        </Button>
      )}
      {!closed && (
        <Button
          kind={person === undefined ? 'main' : 'plain'}
          icon="bag"
          href={to(paths.pack(round.id))}
        >
          {say.pack}
        </Button>
      )}
      {round.boxes.length > 0 && (
        <Button icon="courier" href={to(paths.handOver(round.id))}>
          {say.handOver}
        </Button>
      )}
      {round.boxes.length > 0 && (
        <Button icon="label" href={to(paths.register(round.id))}>
          {say.register}
        </Button>
      )}
      {!closed && waiting !== undefined && round.turns.length > 0 && (
        <Button icon="clock" href={to(paths.replan(round.id))}>
          {planner.rest}
        </Button>
      )}
      {!closed && (
        <Button icon="note" href={to(paths.editRound(round.id))}>
          {say.edit}
        </Button>
      )}
      <Button kind="quiet" href={to(paths.paper(round.id))}>
        {say.fromPaper}
      </Button>
    </div>
  );
}
