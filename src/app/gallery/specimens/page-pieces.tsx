import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { Button } from '../../pieces/form/button.tsx';
import { Dialog } from '../../pieces/page/dialog.tsx';
import { EmptyState } from '../../pieces/page/empty-state.tsx';
import { useAnnounce } from '../../pieces/page/live-region.tsx';
import { PageShell } from '../../pieces/page/page-shell.tsx';
import { Steps } from '../../pieces/page/steps.tsx';
import { SyncLine } from '../../pieces/page/sync-line.tsx';
import { navAt, service, signedIn } from '../demo.ts';
import { Specimen } from '../specimen.tsx';

export function PagePieces(): JSX.Element {
  const [open, setOpen] = useState(false);
  return (
    <PageShell
      service={service}
      nav={navAt('Kits')}
      who={signedIn}
      onLock={() => undefined}
      sync={{ kind: 'kept', count: 14, lastMet: '2026-11-26T06:41:00Z' }}
      storage="low"
    >
      <h1>Page pieces</h1>
      <Specimen name="Sync lines">
        <SyncLine state={{ kind: 'nothing' }} />
        <SyncLine state={{ kind: 'sent', count: 14 }} />
        <SyncLine state={{ kind: 'sending', count: 3 }} />
        <SyncLine state={{ kind: 'kept', count: 1 }} />
        <SyncLine state={{ kind: 'trouble' }} />
      </Specimen>
      <Specimen name="Said to a screen reader">
        <AnnounceTrial />
      </Specimen>
      <Specimen name="Steps">
        <Steps
          name="Prepare a round"
          labels={['Day and courier', 'The pair', 'People', 'Kits']}
          current={2}
        />
      </Specimen>
      <Specimen name="Empty">
        <EmptyState
          title="No round today"
          action={<Button href="#prepare">Prepare a round</Button>}
        >
          Nobody is due before Monday.
        </EmptyState>
      </Specimen>
      <Specimen name="Dialog">
        <Button onPress={() => setOpen(true)}>Hand over this turn</Button>
        <Dialog open={open} title="Who takes this turn?" onClose={() => setOpen(false)}>
          <p>The new pair asks who and willing again.</p>
          <div class="button-row">
            <Button kind="main" onPress={() => setOpen(false)}>
              Pia and Wren
            </Button>
            <Button onPress={() => setOpen(false)}>Keep it</Button>
          </div>
        </Dialog>
      </Specimen>
    </PageShell>
  );
}

function AnnounceTrial(): JSX.Element {
  const announce = useAnnounce();
  return <Button onPress={() => announce('Kept.')}>Keep</Button>;
}
