import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { Pair } from '../../../care/custody/turn.ts';
import type { Against } from '../../../care/people/helpers.ts';
import { againstWishes } from '../../../care/people/helpers.ts';
import { preparationsFor } from '../../../care/rounds/preparations.ts';
import type { Reminder } from '../../../care/rounds/readiness.ts';
import { readinessOf } from '../../../care/rounds/readiness.ts';
import { sitesOn } from '../../../care/support/plan.ts';
import { tabletTouched, tabletWiped } from '../../../procedures/plan-round.ts';
import { preparationDone } from '../../../procedures/record-consent.ts';
import { todayOf, useDesk } from '../../desk/desk.ts';
import { useAct } from '../../desk/use-act.ts';
import { BigButton } from '../../pieces/bedside/big-button.tsx';
import { Button } from '../../pieces/form/button.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { Dialog } from '../../pieces/page/dialog.tsx';
import { useWords } from '../../words/use-words.ts';
import { WishNotice } from '../parts/wish-notice.tsx';
import { paths, to } from '../paths.ts';
import { sayReminder } from '../say-reminder.ts';
import { PairPicker } from './pair-picker.tsx';
import type { TurnData } from './turn-data.ts';
import { pairFor } from './turn-data.ts';
import { TurnFrame } from './turn-frame.tsx';
import type { TurnAct } from './use-turn.ts';

interface NextProps {
  readonly data: TurnData;
  readonly turnAct: TurnAct;
}

/** Before the turn: what helps this person, what means stop, and one tap to begin. */
export function StepNext({ data, turnAct }: NextProps): JSX.Element {
  const desk = useDesk();
  const words = useWords();
  const say = words.turn.next;
  const [pair, setPair] = useState<Pair>(() => pairFor(desk, data.round));
  const { round, person } = data;
  const begin = (changedMind: boolean) =>
    turnAct.touch({ do: 'start', round: round.id, person: person.id, ...pair, changedMind });
  const against = againstWishes(desk.home, person.id, pair);
  const saidNo = data.turn?.closed?.data.end === 'declined';
  if (round.touched !== undefined) return <WipeFirst data={data} turnAct={turnAct} />;
  return (
    <TurnFrame
      data={data}
      turnAct={turnAct}
      step={`next-${person.id}`}
      title={say.title(person.called)}
      asides={
        <>
          <ChangePair pair={pair} onPair={setPair} against={against} />
          <Touched data={data} />
          <Button icon="back" href={to(paths.round(round.id))}>
            {say.other}
          </Button>
        </>
      }
      primary={
        <BigButton
          step={`next-${person.id}`}
          now={desk.monotonic}
          onPress={() => void begin(saidNo)}
        >
          {saidNo ? say.changedMind(person.called) : say.start(person.called)}
        </BigButton>
      }
    >
      <WishNotice against={against} />
      <Told data={data} />
      <PlanLines data={data} />
    </TurnFrame>
  );
}

/** What of the record is not as it should be, where policy lets the turn begin all the same. */
const TOLD = new Set<Reminder['remind']>([
  ...(['no-plan', 'plan-review-due', 'plan-clash', 'photo-old'] as const),
  ...(['decision-review-due', 'document-not-seen', 'practice'] as const),
]);

function Told({ data }: Pick<NextProps, 'data'>): JSX.Element | null {
  const desk = useDesk();
  const words = useWords();
  const { round, person } = data;
  const when = { test: round.planned.data.test, on: todayOf(desk), round: round.id };
  const told = readinessOf(desk.home, person.id, when).reminders.filter(({ remind }) =>
    TOLD.has(remind),
  );
  if (told.length === 0) return null;
  return (
    <Notice kind="look" title={words.turn.next.told}>
      {told.map((each) => sayReminder(each, words)).join(' ')}
    </Notice>
  );
}

function PlanLines({ data }: Pick<NextProps, 'data'>): JSX.Element {
  const desk = useDesk();
  const words = useWords();
  const say = words.turn.next;
  const { plan, person, round } = data;
  const why = round.people.find((listed) => listed.person === person.id)?.why;
  return (
    <>
      {why !== undefined && (
        <p>{say.why(why === 'asked-for' ? words.rounds.askedFor : words.rules[why])}</p>
      )}
      <p>
        {sitesOn(plan, todayOf(desk)) === 'nose-only' ? say.nose : say.sites}{' '}
        {plan.selfSwab && say.self}
      </p>
      {plan.text('place') !== '' && (
        <p>
          <b>{say.place}</b> {plan.text('place')}
        </p>
      )}
      {plan.text('never') !== '' && (
        <p>
          <b>{say.never}</b> {plan.text('never')}
        </p>
      )}
      <Preparations data={data} />
    </>
  );
}

function Preparations({ data }: Pick<NextProps, 'data'>): JSX.Element | null {
  const desk = useDesk();
  const words = useWords();
  const { act } = useAct();
  const say = words.turn.next;
  const open = preparationsFor(desk.home, data.person.id, {
    on: todayOf(desk),
    round: data.round.id,
  });
  if (open.length === 0) return null;
  return (
    <div>
      <p>
        <b>{say.preparation}</b>
      </p>
      <ul>
        {open.map(({ agreed, done }) => (
          <li key={agreed.id}>
            {agreed.private?.words ?? ''} {say.minutes(agreed.data.leadMinutes)}.{' '}
            {done === undefined && (
              <Button
                onPress={() =>
                  void act(() =>
                    preparationDone({
                      person: data.person.id,
                      round: data.round.id,
                      agreed: agreed.id,
                    }),
                  )
                }
              >
                {say.preparationDone}
              </Button>
            )}
          </li>
        ))}
      </ul>
    </div>
  );
}

function ChangePair({
  pair,
  onPair,
  against,
}: {
  readonly pair: Pair;
  readonly onPair: (pair: Pair) => void;
  readonly against: readonly Against[];
}): JSX.Element {
  const { turn, form } = useWords();
  const [open, setOpen] = useState(false);
  return (
    <>
      <Button icon="person" onPress={() => setOpen(true)}>
        {turn.next.change}
      </Button>
      <Dialog open={open} title={turn.next.change} onClose={() => setOpen(false)}>
        <PairPicker pair={pair} onPair={onPair} />
        <WishNotice against={against} />
        <Button kind="main" onPress={() => setOpen(false)}>
          {form.close}
        </Button>
      </Dialog>
    </>
  );
}

function Touched({ data }: Pick<NextProps, 'data'>): JSX.Element {
  const { turn } = useWords();
  const { act } = useAct();
  return (
    <Button icon="gloves" onPress={() => void act(() => tabletTouched(data.round.id))}>
      {turn.wiped.touched}
    </Button>
  );
}

/** Used gloves touched the tablet: nothing starts until it is wiped. */
function WipeFirst({ data, turnAct }: NextProps): JSX.Element {
  const desk = useDesk();
  const { turn } = useWords();
  const { act } = useAct();
  return (
    <TurnFrame
      data={data}
      turnAct={turnAct}
      step="wipe"
      title={turn.wiped.title}
      primary={
        <BigButton
          step="wipe"
          now={desk.monotonic}
          onPress={() => void act((home) => tabletWiped(home, data.round.id))}
        >
          {turn.wiped.done}
        </BigButton>
      }
    >
      <p>{turn.wiped.body}</p>
    </TurnFrame>
  );
}
