import type { ComponentChildren } from 'preact';
import { BigButton } from '../../pieces/bedside/big-button.tsx';
import { BlindChoice } from '../../pieces/bedside/blind-choice.tsx';
import { DwellDial } from '../../pieces/bedside/dwell-dial.tsx';
import { SignChoice } from '../../pieces/bedside/sign-choice.tsx';
import { Button } from '../../pieces/form/button.tsx';
import { ScanField } from '../../pieces/scan/scan-field.tsx';

interface Turn {
  readonly drawing: string;
  readonly title: string;
  readonly children: ComponentChildren;
  readonly asides?: ComponentChildren;
  readonly primary?: ComponentChildren;
  readonly stopped?: boolean;
}

const now = (): number => performance.now();
const nothing = (): void => undefined;
const birthdays = ['14 March 1951', '2 June 1948', '14 March 1957', '30 November 1960'];

const big = (words: string): ComponentChildren => (
  <BigButton step={words} now={now} onPress={nothing}>
    {words}
  </BigButton>
);
const leave = (
  <Button icon="leave" onPress={nothing}>
    We must leave
  </Button>
);

/** States of a turn, drawn with Cor. Numbers are those of the flow. */
export const turns: Readonly<Record<string, Turn>> = {
  who: {
    drawing: 'hoooooooo',
    title: 'Ask, then pick what you hear.',
    children: (
      <BlindChoice
        step="who"
        now={now}
        question="When is your birthday?"
        hint="Ask it just so. Do not say a date yourself."
        options={birthdays.map((text) => ({ key: text, text }))}
        onPick={nothing}
      />
    ),
    asides: leave,
  },
  willing: {
    drawing: '*hooooooo',
    title: 'Show the swab. Ask if now is all right.',
    children: (
      <SignChoice
        step="willing"
        now={now}
        question="What did Cor do?"
        signs={[
          { key: 'yes', mark: 'tick', word: 'Yes', sign: 'thumb up, or opens his mouth' },
          { key: 'no', mark: 'close', word: 'No', sign: 'turns to the wall, or hums' },
          {
            key: 'unsure',
            mark: 'unsure',
            word: 'Not sure',
            sign: 'looks at you and waits. Not now, then.',
          },
        ]}
        onPick={nothing}
      />
    ),
    asides: leave,
  },
  kit: {
    drawing: '**hoooooo',
    title: 'Open one kit. Scan its spare label.',
    children: <ScanField onCode={nothing} />,
    asides: (
      <>
        <Button icon="kit" onPress={nothing}>
          Something is wrong with the kit
        </Button>
        {leave}
      </>
    ),
  },
  throat: {
    drawing: '***hooooo',
    title: 'Throat. Both sides at the back, gently.',
    children: <DwellDial elapsed={3.2} target={{ from: 10, to: 10 }} />,
    asides: leave,
    primary: big('Nose: start'),
  },
  nose: {
    drawing: '***hooooo',
    title: 'First side. Ease the tip in, stop at the first resistance, keep turning.',
    children: <DwellDial elapsed={11.4} target={{ from: 10, to: 15 }} />,
    asides: leave,
    primary: big('Out'),
  },
  stopped: {
    drawing: '***!ooooo',
    stopped: true,
    title: 'Stopped for Cor at 10:42. Leave him in peace.',
    children: (
      <>
        <p>Is the swab out? Is the lid on?</p>
        <div class="button-row">
          <Button onPress={nothing}>Swab out, lid not on</Button>
          <Button onPress={nothing}>Swab out, lid on</Button>
        </div>
        <p>You can say why later. Cor may be asked once more from 11:12.</p>
      </>
    ),
    asides: (
      <Button icon="back" onPress={nothing}>
        Pressed by mistake
      </Button>
    ),
  },
};
