import type { JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { isOpen, turnsInRound } from '../../../care/custody/person-turns.ts';
import type { Step } from '../../../care/custody/step.ts';
import { stepOf } from '../../../care/custody/step.ts';
import type { PersonId, RoundId, TurnId } from '../../../care/ids.ts';
import { roundOf } from '../../../care/rounds/round.ts';
import { useDesk } from '../../desk/desk.ts';
import { useWords } from '../../words/use-words.ts';
import { EmptyPage } from '../empty-page.tsx';
import { StepEnded } from './step-ended.tsx';
import { StepInterrupted } from './step-interrupted.tsx';
import { StepCheck, StepKit, StepLabel } from './step-kit.tsx';
import { StepNext } from './step-next.tsx';
import { StepSettled } from './step-settled.tsx';
import { StepStopped } from './step-stopped.tsx';
import { StepReady, StepSwab } from './step-swab.tsx';
import { StepTube } from './step-tube.tsx';
import { StepWho } from './step-who.tsx';
import { StepWilling } from './step-willing.tsx';
import { turnData } from './turn-data.ts';
import type { StepProps } from './turn-frame.tsx';
import { useTurn } from './use-turn.ts';

const SCREENS: Record<Exclude<Step, 'ended'>, (props: StepProps) => JSX.Element | null> = {
  who: StepWho,
  willing: StepWilling,
  kit: StepKit,
  check: StepCheck,
  'label-tube': StepLabel,
  'label-bag': StepLabel,
  ready: StepReady,
  swab: StepSwab,
  lid: StepTube,
  bag: StepTube,
  settled: StepSettled,
  stopped: StepStopped,
  interrupted: StepInterrupted,
};

export interface TurnScreenProps {
  readonly round: RoundId;
  readonly person: PersonId;
}

/** One person's turn: whatever step its facts say is next. */
export function TurnScreen({ round: id, person }: TurnScreenProps): JSX.Element {
  const desk = useDesk();
  const words = useWords();
  const turnAct = useTurn();
  // The turn worked on here, so that its end is told before another try is offered.
  const [inHand, setInHand] = useState<TurnId | undefined>(undefined);
  const round = roundOf(desk.home, id);
  const inTurn = round !== undefined && turnsInRound(desk.home, person, id).some(isOpen);
  useEffect(() => (inTurn ? desk.holdOpen() : undefined), [inTurn]);
  if (round === undefined) return <EmptyPage title={words.refusals.unknownPerson} />;
  const data = turnData(desk, round, person);
  const { turn, test } = data;
  if (turn === undefined) return <StepNext key={person} data={data} turnAct={turnAct} />;
  if (turn.closed !== undefined) {
    return inHand === turn.id ? (
      <StepEnded data={data} turnAct={turnAct} />
    ) : (
      <StepNext key={person} data={data} turnAct={turnAct} />
    );
  }
  if (inHand !== turn.id) setInHand(turn.id);
  const elsewhere = turn.device !== desk.device;
  const step = elsewhere ? 'interrupted' : stepOf(turn, test);
  if (step === 'ended') return <StepEnded data={data} turnAct={turnAct} />;
  const Screen = SCREENS[step];
  return <Screen key={turn.id} data={data} turn={turn.id} step={step} turnAct={turnAct} />;
}
