import type { JSX } from 'preact';
import { testOf } from '../../../care/custody/test.ts';
import { kitKindOf } from '../../../care/policy/in-force.ts';
import { reserve } from '../../../care/supplies/stock.ts';
import { todayOf, useDesk } from '../../desk/desk.ts';
import { useGoOn } from '../../keeping/use-go-on.ts';
import { BigButton } from '../../pieces/bedside/big-button.tsx';
import { Button } from '../../pieces/form/button.tsx';
import { Icon } from '../../pieces/icon/icon.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { useWords } from '../../words/use-words.ts';
import { paths } from '../paths.ts';
import { KitTrouble } from './kit-trouble.tsx';
import { ReadCodeField } from './read-code-field.tsx';
import type { StepProps } from './turn-frame.tsx';
import { TurnFrame } from './turn-frame.tsx';
import { useQuick } from './use-quick.ts';
import './turn.css';

/** Scan a: one kit is opened, its spare label read. */
export function StepKit({ data, turn, step, turnAct }: StepProps): JSX.Element {
  const desk = useDesk();
  const words = useWords();
  const say = words.turn.kit;
  const kitKind = data.round.planned.data.kitKind;
  const [first] = reserve(desk.home, kitKind, { on: todayOf(desk), count: 1 }).reserved;
  const go = useGoOn();
  const endTurn = async () => {
    if (await turnAct.touch({ do: 'finish' }, turn)) go(paths.round(data.round.id));
  };
  const last = data.turn?.tests.at(-1);
  const again = last !== undefined;
  const why = last === undefined ? undefined : testOf(desk.home, last).spoilReason;
  return (
    <TurnFrame
      data={data}
      turnAct={turnAct}
      step={`${turn}-${step}`}
      title={say.title}
      asides={
        again && (
          <Button icon="close" onPress={() => void endTurn()}>
            {say.enough}
          </Button>
        )
      }
      stops={turn}
      leaves={turn}
    >
      {why !== undefined && (
        <Notice kind="look" title={say.closed[why] ?? words.turn.faults[why]}>
          {say.again}
        </Notice>
      )}
      {first !== undefined && <p>{say.first(first.lot.lot, first.lot.expires)}</p>}
      <ReadCodeField data={data} turn={turn} turnAct={turnAct} touch="open-kit" />
    </TurnFrame>
  );
}

/** T4: what is in the kit, part by part, as its own list says. */
export function StepCheck({ data, turn, step, turnAct }: StepProps): JSX.Element {
  const desk = useDesk();
  const words = useWords();
  const quick = useQuick(`${turn}-${step}`);
  const kit = kitKindOf(data.policy, data.round.planned.data.kitKind);
  return (
    <TurnFrame
      data={data}
      turnAct={turnAct}
      step={`${turn}-${step}`}
      title={words.turn.check.title}
      asides={
        <KitTrouble
          step={step}
          onFault={(why) => void turnAct.touch({ do: 'kit-fault', why }, turn)}
        />
      }
      primary={
        <BigButton
          step={`${turn}-${step}`}
          now={desk.monotonic}
          onPress={() => void turnAct.touch({ do: 'contents-right', ...quick() }, turn)}
        >
          {words.turn.check.all}
        </BigButton>
      }
      stops={turn}
      leaves={turn}
    >
      <ul class="kit-parts">
        {kit?.contents.map(({ part, picture }) => (
          <li key={part}>
            <Icon name={picture} />
            {part}
          </li>
        ))}
      </ul>
    </TurnFrame>
  );
}

/** Scans b and c: the same code where it was stuck, read after sticking. */
export function StepLabel({ data, turn, step, turnAct }: StepProps): JSX.Element {
  const words = useWords();
  const tube = step === 'label-tube';
  const say = tube ? words.turn.tube : words.turn.bag;
  return (
    <TurnFrame
      data={data}
      turnAct={turnAct}
      step={`${turn}-${step}`}
      title={say.title}
      asides={
        <KitTrouble
          step={step}
          onFault={(why) => void turnAct.touch({ do: 'kit-fault', why }, turn)}
        />
      }
      stops={turn}
      leaves={turn}
    >
      {tube && <p>{words.turn.tube.note}</p>}
      <ReadCodeField data={data} turn={turn} turnAct={turnAct} touch="read-label" />
    </TurnFrame>
  );
}
