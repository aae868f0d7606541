import type { JSX } from 'preact';
import { TallyFrame } from '../../pieces/frame/tally-frame.tsx';
import { WorkList } from '../../pieces/list/work-list.tsx';
import { PageShell } from '../../pieces/page/page-shell.tsx';
import { useWords } from '../../words/use-words.ts';
import { beads, navAt, round, service, signedIn, steps } from '../demo.ts';
import { morning } from './morning.tsx';

const at = '2026-11-26T07:00:00Z';

/** The first screen of the day, at seven. */
export function NowScreen(): JSX.Element {
  const words = useWords();
  const untouched = round.map((row, i) => ({
    ...row,
    current: false,
    note: ['10:00', '10:20', '10:40', '11:00', '11:20', '11:40, after her walk'][i],
    beads: beads('ooooooooo'),
  }));
  return (
    <PageShell
      service={service}
      nav={navAt('Now')}
      who={signedIn}
      onLock={() => undefined}
      sync={{ kind: 'kept', count: 14, lastMet: '2026-11-26T06:41:00Z' }}
    >
      <div class="now-head">
        <h1>Now</h1>
        <p>
          {words.dates.day(at)}, {words.dates.time(at)}
        </p>
      </div>
      {morning.map((group) => (
        <WorkList key={group.title} {...group} />
      ))}
      <section class="work">
        <h2>Today at ten: Pia and Jonah, six people</h2>
        <p class="round-line">Courier 14:30. Pack by 14:05. Six kits put by, soonest end first.</p>
        <TallyFrame caption="Today's round, not begun" steps={steps(words)} rows={untouched} />
      </section>
      <p class="now-fine">
        Nothing else needs you: 9 people told their result, 2 refusals with a next date, 31 kits in
        stock, 3 tablets met this morning.
      </p>
    </PageShell>
  );
}
