import type { JSX } from 'preact';
import type { Progress, RoundStage } from '../../../care/rounds/progress.ts';
import type { Round } from '../../../care/rounds/round.ts';
import { useDesk } from '../../desk/desk.ts';
import { namesIn } from '../../desk/names.ts';
import { Bead } from '../../pieces/frame/bead.tsx';
import type { BeadState } from '../../pieces/frame/bead-state.ts';
import { Chips } from '../../pieces/list/chips.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { paths, to } from '../paths.ts';

export interface RoundSummary {
  readonly round: Round;
  readonly progress: Progress;
}

/** One round: its day, how far it is, and whether its kits come out. */
export function RoundLine({ round, progress }: RoundSummary): JSX.Element {
  const { home } = useDesk();
  const words = useAllWords();
  const say = words.roundList;
  const names = namesIn(home, words.refusals.somebody);
  const { day, swabber, recorder } = round.planned.data;
  const { tally, stage, toRegister, resultsWaiting } = progress;
  const off = tally.opened.length - tally.packed.length - tally.spoiled.length;
  const state = beadOf(stage, tally.held.length > 0);
  const chips = [
    ...(tally.held.length > 0 ? [{ key: 'held', text: words.now.groups.settle, look: true }] : []),
    ...(stage === 'registering' ? [{ key: 'register', text: say.notRegistered(toRegister) }] : []),
    ...(resultsWaiting > 0 && round.closings.length > 0
      ? [{ key: 'results', text: say.noResult(resultsWaiting) }]
      : []),
  ];
  return (
    <li class="round-line">
      <Bead state={state} />
      <div class="round-line-what">
        <a href={to(paths.round(round.id))}>{say.title(day)}</a>
        <p>
          <b>{say.stages[stage]}.</b> {say.courier(round.courier)}.{' '}
          {say.people(round.people.length)}. {say.pair(names.staff(swabber), names.staff(recorder))}
          .
        </p>
      </div>
      <div class="round-line-tally">
        <p>
          {off > 0
            ? say.offBy(off)
            : say.tally(tally.opened.length, tally.packed.length, tally.spoiled.length)}
        </p>
        <Chips chips={chips} />
      </div>
    </li>
  );
}

function beadOf(stage: RoundStage, held: boolean): BeadState {
  if (held) return 'look';
  if (stage === 'planned') return 'todo';
  return stage === 'settled' ? 'done' : 'hand';
}
