import type { JSX } from 'preact';
import { BigButton } from '../../pieces/bedside/big-button.tsx';
import { Button } from '../../pieces/form/button.tsx';
import { BeadKey } from '../../pieces/frame/bead-key.tsx';
import { TallyFrame } from '../../pieces/frame/tally-frame.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { PageShell } from '../../pieces/page/page-shell.tsx';
import { useWords } from '../../words/use-words.ts';
import { navAt, round, service, signedIn, steps } from '../demo.ts';

/** A round under way. */
export function RoundScreen(): JSX.Element {
  const words = useWords();
  return (
    <PageShell
      service={service}
      nav={navAt('Rounds')}
      who={signedIn}
      onLock={() => undefined}
      sync={{ kind: 'kept', count: 14 }}
    >
      <div>
        <h1>Thursday's round</h1>
        <p class="round-line">
          {words.frame.tallied({ done: 1, of: 6 })} Courier 14:30, pack by 14:05. You have 38
          minutes in hand.
        </p>
      </div>
      <TallyFrame caption="Thursday's round" steps={steps(words)} rows={round} />
      <BeadKey />
      <Notice
        kind="look"
        title="Ismay's tube leaked at the lid."
        action={<Button href="#ismay">Open kit 2 of 3</Button>}
      >
        Put it in the waste bag, wipe down, change gloves. Her first code is closed for good.
      </Notice>
      <Notice kind="note" title="Two kits end on Sunday.">
        This round uses them first.
      </Notice>
      <BigButton step="round" now={() => performance.now()} onPress={() => undefined}>
        Carry on with Cor
      </BigButton>
    </PageShell>
  );
}
