import type { JSX } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import type { RoundId } from '../../../care/ids.ts';
import type { Round } from '../../../care/rounds/round.ts';
import { roundOf } from '../../../care/rounds/round.ts';
import { planRound } from '../../../procedures/plan-round.ts';
import { useDesk } from '../../desk/desk.ts';
import { useGoOn } from '../../keeping/use-go-on.ts';
import { useKeep } from '../../keeping/use-keep.ts';
import { Button } from '../../pieces/form/button.tsx';
import { ErrorSummary } from '../../pieces/form/error-summary.tsx';
import { Steps } from '../../pieces/page/steps.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { EmptyPage } from '../empty-page.tsx';
import { PageHead } from '../page-head.tsx';
import { paths } from '../paths.ts';
import { planOf } from './draft.ts';
import { StepCheck } from './step-check.tsx';
import { StepOrder } from './step-order.tsx';
import { StepWhen } from './step-when.tsx';
import { StepWho } from './step-who.tsx';
import { prepareSteps } from './steps.ts';
import { usePrepare } from './use-prepare.ts';
import { wrongAt } from './wrong.ts';
import '../../keeping/record-form.css';
import './prepare.css';

const BODY = { when: StepWhen, who: StepWho, order: StepOrder, check: StepCheck };

/** A new round. */
export const NewRoundScreen = (): JSX.Element => <PrepareScreen round={undefined} step={0} />;

/** A planned round, changed until it is closed. */
export function EditRoundScreen({
  round: id,
  step = 0,
}: {
  readonly round: RoundId;
  /** Which step it opens at: to plan the rest again, the order. */
  readonly step?: number;
}): JSX.Element {
  const { home } = useDesk();
  const words = useAllWords();
  const round = roundOf(home, id);
  if (round === undefined) return <EmptyPage title={words.refusals.unknownPerson} />;
  if (round.closings.length > 0) return <EmptyPage title={words.prepare.closed} />;
  return <PrepareScreen round={round} step={step} />;
}

/** Four steps: when, who, in which order, and everything told before it is kept. */
function PrepareScreen({
  round,
  step: first,
}: {
  readonly round: Round | undefined;
  readonly step: number;
}): JSX.Element {
  const words = useAllWords();
  const say = words.prepare;
  const [at, setAt] = useState(first);
  const [turned, setTurned] = useState(false);
  const go = useGoOn();
  const prepare = usePrepare(round);
  const keep = useKeep();
  const step = prepareSteps[at] ?? 'when';
  const Body = BODY[step];

  const turnTo = (next: number): void => {
    setAt(next);
    setTurned(true);
    window.scrollTo(0, 0);
  };
  const onward = async (): Promise<void> => {
    const wrong = wrongAt(step, prepare, words);
    if (step !== 'check') {
      if (keep.fine(wrong)) turnTo(at + 1);
      return;
    }
    const { home, now } = prepare.desk;
    const people = prepare.places.map(({ person }) => person);
    const plan = planOf(home, prepare.draft, { people, now: now() });
    if (plan === undefined) {
      turnTo(0);
      return;
    }
    const kept = await keep.keep(wrong, (latest, doing) => planRound(latest, plan, doing));
    const planned = kept?.find((fact) => fact.kind === 'round.planned');
    if (planned === undefined) return;
    prepare.drop();
    go(paths.round(planned.data.round));
  };

  return (
    <>
      <PageHead title={round === undefined ? say.title : say.change}>
        <Steps name={say.title} labels={prepareSteps.map((each) => say.steps[each])} current={at} />
      </PageHead>
      <ErrorSummary problems={keep.problems} attempt={keep.attempt} />
      <form
        class="prepare"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          void onward();
        }}
      >
        <StepHead key={`${step}-head`} title={say.titles[step]} moved={turned} />
        <Body key={step} prepare={prepare} problemOf={keep.problemOf} />
        <div id="keep" class="prepare-on" tabIndex={-1}>
          <Button kind="main" submit>
            {step === 'check' ? say.keep : say.next}
          </Button>
          {at > 0 && (
            <Button icon="back" onPress={() => turnTo(at - 1)}>
              {say.back}
            </Button>
          )}
        </div>
      </form>
    </>
  );
}

/** Takes the focus when one goes on or back, so that a screen reader says where one is. */
function StepHead({
  title,
  moved,
}: {
  readonly title: string;
  readonly moved: boolean;
}): JSX.Element {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    if (moved) heading.current?.focus({ preventScroll: true });
  }, []);
  return (
    <h2 ref={heading} tabIndex={-1}>
      {title}
    </h2>
  );
}
