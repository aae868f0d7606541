import type { JSX } from 'preact';
import type { Finding, Standing } from '../../../care/quality/finding.ts';
import { standingOf } from '../../../care/quality/finding.ts';
import { findings } from '../../../care/quality/findings.ts';
import { useDesk } from '../../desk/desk.ts';
import { namesIn } from '../../desk/names.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Bead } from '../../pieces/frame/bead.tsx';
import { Part } from '../../pieces/page/part.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { PageHead } from '../page-head.tsx';
import { paths, to } from '../paths.ts';
import { ChainPart } from './chain-part.tsx';
import { whoseIs } from './whose.ts';
import './finding.css';

interface Judged {
  readonly finding: Finding;
  readonly standing: Standing;
}

/** Everything on record that did not fit: what waits for a senior first, then what was settled. */
export function FindingsScreen(): JSX.Element {
  const { home } = useDesk();
  const { findings: say } = useAllWords();
  const all = findings(home).map((finding) => ({ finding, standing: standingOf(home, finding) }));
  const open = all.filter(({ standing }) => standing.state !== 'settled').sort(heldFirst);
  const settled = all.filter(({ standing }) => standing.state === 'settled').sort(newestFirst);
  return (
    <div class="finding-page">
      <PageHead title={say.listTitle}>
        <p>{say.lead}</p>
      </PageHead>
      <Part title={say.openPart}>
        {open.length === 0 ? <p>{say.noneOpen}</p> : <FindingList judged={open} />}
      </Part>
      <ChainPart />
      <Part title={say.settledPart}>
        {settled.length === 0 ? <p>{say.noneSettled}</p> : <FindingList judged={settled} />}
      </Part>
    </div>
  );
}

/** What holds somebody's test comes first. */
const heldFirst = (a: Judged, b: Judged): number =>
  b.finding.tests.length - a.finding.tests.length || (a.finding.id < b.finding.id ? -1 : 1);

const newestFirst = (a: Judged, b: Judged): number => (settledAt(a) < settledAt(b) ? 1 : -1);
const settledAt = ({ standing }: Judged): string =>
  standing.state === 'settled' ? standing.settlement.at : '';

function FindingList({ judged }: { readonly judged: readonly Judged[] }): JSX.Element {
  const { home } = useDesk();
  const words = useAllWords();
  const say = words.findings;
  const names = namesIn(home, words.refusals.somebody);
  return (
    <ul class="finding-list">
      {judged.map(({ finding, standing }) => {
        const what = words.now.findings[finding.kind];
        const whose = whoseIs(home, finding, names);
        return (
          <li key={finding.id}>
            <Bead state={standing.state === 'settled' ? 'done' : 'look'} />
            <div>
              <h3>{what}</h3>
              <p>
                {whose.length > 0 && `${say.whose(whose)}. `}
                {standing.state === 'settled'
                  ? say.settledOn(standing.settlement.at, names.staff(standing.settlement.by))
                  : say.stateSaid[standing.state]}
              </p>
            </div>
            <Button
              href={to(paths.finding(finding.id))}
              label={say.openWhat(what, say.whose(whose))}
            >
              {say.open}
            </Button>
          </li>
        );
      })}
    </ul>
  );
}
