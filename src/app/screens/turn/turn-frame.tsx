import type { ComponentChildren, JSX } from 'preact';
import type { Step } from '../../../care/custody/step.ts';
import type { TurnId } from '../../../care/ids.ts';
import { beadNames } from '../../../care/rounds/frame.ts';
import { useDesk } from '../../desk/desk.ts';
import { namesIn } from '../../desk/names.ts';
import { BedsideLayout } from '../../pieces/bedside/bedside-layout.tsx';
import { Button } from '../../pieces/form/button.tsx';
import type { WireStep } from '../../pieces/frame/wire-summary.ts';
import { useWords } from '../../words/use-words.ts';
import type { TurnData } from './turn-data.ts';
import { pairFor } from './turn-data.ts';
import type { TurnAct } from './use-turn.ts';

export interface StepProps {
  readonly data: TurnData;
  readonly turn: TurnId;
  readonly step: Step;
  readonly turnAct: TurnAct;
}

export interface TurnFrameProps {
  readonly data: TurnData;
  readonly turnAct: TurnAct;
  /** Changes with every step: wakes the deafness and moves the focus. */
  readonly step: string;
  readonly title: string;
  readonly children?: ComponentChildren;
  readonly asides?: ComponentChildren;
  readonly primary?: ComponentChildren;
  /** While the person's name must not stand on the screen. */
  readonly nameHidden?: boolean;
  /** The turn that Stop stops; left out where nothing is asked of anybody. */
  readonly stops?: TurnId | undefined;
  /** The turn that may be broken off for an alarm. */
  readonly leaves?: TurnId | undefined;
}

/** The same surroundings for every step: face, wire, what helps, what means stop, and Stop itself. */
export function TurnFrame(props: TurnFrameProps): JSX.Element {
  const { data, turnAct, stops, leaves } = props;
  const desk = useDesk();
  const words = useWords();
  const { person, plan } = data;
  const hidden = props.nameHidden === true;
  return (
    <BedsideLayout
      person={{
        name: hidden ? words.turn.hiddenName : person.name,
        called: person.called,
        ...(!hidden && { photo: person.photo }),
      }}
      facts={facts(props)}
      wire={wireSteps(data, words.frame.steps)}
      sync={desk.sync}
      helps={plan.text('helps') || words.turn.noHelps}
      stopsWhen={plan.text('stop-signs') || words.turn.noStops}
      step={props.step}
      title={props.title}
      asides={
        <>
          {props.asides}
          {leaves !== undefined && (
            <Button
              icon="leave"
              onPress={() => void turnAct.touch({ do: 'interrupt', why: 'other' }, leaves)}
            >
              {words.turn.leave}
            </Button>
          )}
        </>
      }
      primary={props.primary}
      onStop={stops === undefined ? undefined : () => void turnAct.touch({ do: 'stop' }, stops)}
    >
      {turnAct.problem !== undefined && (
        <p class="field-problem" role="alert">
          {turnAct.problem}
        </p>
      )}
      {props.children}
    </BedsideLayout>
  );

  function facts({ nameHidden }: TurnFrameProps): string[] {
    const { swabber, recorder } =
      data.turn?.closed === undefined && data.turn !== undefined
        ? data.turn.pair
        : pairFor(desk, data.round);
    const names = namesIn(desk.home, words.refusals.somebody);
    return [
      ...(nameHidden === true ? [] : warnNamesake()),
      words.turn.pair(names.staff(swabber), names.staff(recorder)),
    ];
  }

  /** A shared name is named; of a shared birthday nothing is said: it is what is asked. */
  function warnNamesake(): string[] {
    const why = new Set(data.namesakes.flatMap((each) => each.why));
    const surname = person.name.split(' ').at(-1) ?? person.name;
    if (why.has('same-surname')) return [words.turn.namesake(surname)];
    if (why.has('same-called')) return [words.turn.namesake(person.called)];
    return why.has('similar-name') ? [words.identity.bedside.sameName] : [];
  }
}

export const wireSteps = (
  data: Pick<TurnData, 'wire'>,
  labels: Readonly<Record<(typeof beadNames)[number], string>>,
): WireStep[] => beadNames.map((key) => ({ key, label: labels[key], state: data.wire.beads[key] }));
