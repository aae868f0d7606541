import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { Site } from '../../../care/custody/facts.ts';
import type { Test } from '../../../care/custody/test.ts';
import type { Turn } from '../../../care/custody/turn.ts';
import { kitKindOf } from '../../../care/policy/in-force.ts';
import type { Policy } from '../../../care/policy/policy.ts';
import type { Instant } from '../../../care/time.ts';
import { wayOf } from '../../../procedures/take-swab/swab.ts';
import type { Desk } from '../../desk/desk.ts';
import { useDesk } from '../../desk/desk.ts';
import { BigButton } from '../../pieces/bedside/big-button.tsx';
import type { DwellTarget } from '../../pieces/bedside/dwell.ts';
import { DwellDial } from '../../pieces/bedside/dwell-dial.tsx';
import { Button } from '../../pieces/form/button.tsx';
import { Dialog } from '../../pieces/page/dialog.tsx';
import { useWords } from '../../words/use-words.ts';
import { KitTrouble } from './kit-trouble.tsx';
import type { StepProps } from './turn-frame.tsx';
import { TurnFrame } from './turn-frame.tsx';
import { useSince, useTicking } from './use-since.ts';

const doingAt = (desk: Desk) => ({
  now: desk.now(),
  by: desk.me,
  device: desk.device,
  draw: () => '',
});

/** Ready: which sites, in which order, and the ways around a throat that is not possible. */
export function StepReady({ data, turn, step, turnAct }: StepProps): JSX.Element {
  const desk = useDesk();
  const words = useWords();
  const say = words.turn.ready;
  const way = data.turn && data.test && wayOf(desk.home, data.turn, data.test, doingAt(desk));
  const throat = way?.sites.includes('throat') ?? true;
  const kit = kitKindOf(data.policy, data.round.planned.data.kitKind);
  return (
    <TurnFrame
      data={data}
      turnAct={turnAct}
      step={`${turn}-${step}`}
      title={say.title}
      asides={
        <>
          {throat && (
            <Button
              icon="nose"
              onPress={() => void turnAct.touch({ do: 'choose-way', sites: 'nose-only' }, turn)}
            >
              {say.noThroat}
            </Button>
          )}
          {way?.taker !== 'person' && (
            <Button
              icon="person"
              onPress={() => void turnAct.touch({ do: 'choose-way', self: true }, turn)}
            >
              {say.self(data.person.called)}
            </Button>
          )}
          <KitTrouble
            step={step}
            onFault={(why) => void turnAct.touch({ do: 'kit-fault', why }, turn)}
          />
        </>
      }
      primary={
        <BigButton
          step={`${turn}-${step}-${throat ? 't' : 'n'}`}
          now={desk.monotonic}
          onPress={() => void turnAct.touch({ do: 'start-site' }, turn)}
        >
          {throat ? say.throatStart : say.noseStart}
        </BigButton>
      }
      stops={turn}
      leaves={turn}
    >
      <p>{say.way[throat ? 'throat-and-nose' : 'nose-only']}</p>
      {throat && kit !== undefined && <p>{say.nothingByMouth(kit.nothingByMouthMinutes.value)}</p>}
      <p>{say.leaflet}</p>
    </TurnFrame>
  );
}

/** The dial runs; one tap ends a site and starts the next, or says that the swab is out. */
export function StepSwab(props: StepProps): JSX.Element | null {
  const { data } = props;
  const { turn: whole, test } = data;
  if (whole === undefined || test?.running === undefined) return null;
  return (
    <Running
      {...props}
      whole={whole}
      test={test}
      site={test.running.data.site}
      since={test.running.at}
    />
  );
}

interface RunningProps extends StepProps {
  readonly whole: Turn;
  readonly test: Test;
  readonly site: Site;
  readonly since: Instant;
}

function Running({ data, turn, turnAct, whole, test, site, since }: RunningProps): JSX.Element {
  const desk = useDesk();
  const words = useWords();
  const say = words.turn.swab;
  const ms = useSince(desk, since);
  const { sites } = wayOf(desk.home, whole, test, doingAt(desk));
  const last = sites.at(-1) === site;
  const both = !sites.includes('throat');
  const key = `${turn}-${site}`;
  const titles: Record<Site, string> = {
    throat: say.throat,
    'nostril-1': both ? say.first : say.one,
    'nostril-2': say.second,
  };
  return (
    <TurnFrame
      data={data}
      turnAct={turnAct}
      step={key}
      title={titles[site]}
      asides={
        <>
          {!last && (
            <Early onShort={(short) => void turnAct.touch({ do: 'out', ms: ms(), short }, turn)} />
          )}
          <KitTrouble
            step="swab"
            onFault={(why) => void turnAct.touch({ do: 'kit-fault', why }, turn)}
          />
        </>
      }
      primary={
        <BigButton
          step={key}
          now={desk.monotonic}
          onPress={() =>
            void turnAct.touch(last ? { do: 'out', ms: ms() } : { do: 'next-site', ms: ms() }, turn)
          }
        >
          {last ? say.out : site === 'throat' ? say.nose : say.other}
        </BigButton>
      }
      stops={turn}
      leaves={turn}
    >
      <Dial ms={ms} target={targetOf(data.policy, site)} />
    </TurnFrame>
  );
}

function Dial({
  ms,
  target,
}: {
  readonly ms: () => number;
  readonly target: DwellTarget;
}): JSX.Element {
  useTicking();
  return <DwellDial elapsed={ms() / 1000} target={target} />;
}

/** About 10 s in the throat, 10 to 15 s a nostril: the policy's values, common practice, no source. */
function targetOf({ technique }: Policy, site: Site): DwellTarget {
  const throat = technique.throatSeconds.value;
  const { least, most } = technique.nostrilSeconds.value;
  return site === 'throat' ? { from: throat, to: throat } : { from: least, to: most };
}

type Short = 'asked-to-finish' | 'sore' | 'blocked' | 'other';

/** Out before the second side: said why, and kept with the swab. */
function Early({ onShort }: { readonly onShort: (why: Short) => void }): JSX.Element {
  const { turn } = useWords();
  const [open, setOpen] = useState(false);
  return (
    <>
      <Button icon="swab" onPress={() => setOpen(true)}>
        {turn.swab.outEarly}
      </Button>
      <Dialog open={open} title={turn.swab.why} onClose={() => setOpen(false)}>
        <div class="button-stack">
          {(Object.keys(turn.swab.short) as Short[]).map((why) => (
            <Button
              key={why}
              onPress={() => {
                setOpen(false);
                onShort(why);
              }}
            >
              {turn.swab.short[why]}
            </Button>
          ))}
        </div>
      </Dialog>
    </>
  );
}
