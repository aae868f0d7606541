import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { SpoilReason } from '../../../care/custody/facts.ts';
import type { Step } from '../../../care/custody/step.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Dialog } from '../../pieces/page/dialog.tsx';
import { useWords } from '../../words/use-words.ts';

/** What can be wrong with a kit at each step; what was seen is named, nothing else. */
const REASONS: Partial<Record<Step, readonly SpoilReason[]>> = {
  check: ['contents-wrong', 'fluid-missing'],
  'label-tube': ['label-unreadable', 'labels-differ', 'contents-wrong', 'fluid-missing'],
  'label-bag': ['label-unreadable', 'labels-differ', 'contents-wrong'],
  ready: ['swab-touched', 'contents-wrong', 'fluid-missing'],
  swab: ['swab-touched', 'shaft-broke'],
  lid: ['leak', 'shaft-broke', 'asked-not-to-send'],
  bag: ['leak', 'asked-not-to-send'],
  settled: ['leak', 'asked-not-to-send'],
};

/** "Something is wrong with the kit": closes it for ever, at two taps. */
export function KitTrouble({
  step,
  onFault,
}: {
  readonly step: Step;
  readonly onFault: (why: SpoilReason) => void;
}): JSX.Element | null {
  const words = useWords();
  const [open, setOpen] = useState(false);
  const reasons = REASONS[step];
  if (reasons === undefined) return null;
  return (
    <>
      <Button icon="kit" onPress={() => setOpen(true)}>
        {words.turn.kitWrong}
      </Button>
      <Dialog open={open} title={words.turn.whatIsWrong} onClose={() => setOpen(false)}>
        <div class="button-stack">
          {reasons.map((why) => (
            <Button
              key={why}
              onPress={() => {
                setOpen(false);
                onFault(why);
              }}
            >
              {words.turn.faults[why]}
            </Button>
          ))}
        </div>
      </Dialog>
    </>
  );
}
