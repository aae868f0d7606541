import type { JSX } from 'preact';
import type { Finding } from '../../../care/quality/finding.ts';
import { standingOf } from '../../../care/quality/finding.ts';
import { findings } from '../../../care/quality/findings.ts';
import { accountsOf } from '../../../care/quality/verdicts.ts';
import { everyMember, workingHere } from '../../../care/staff/member.ts';
import { ranks } from '../../../care/staff/rights.ts';
import { mayAs, todayOf, useDesk } from '../../desk/desk.ts';
import { namesIn } from '../../desk/names.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { Disclosure } from '../../pieces/page/disclosure.tsx';
import { Part } from '../../pieces/page/part.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { EmptyPage } from '../empty-page.tsx';
import { PageHead } from '../page-head.tsx';
import { paths, to } from '../paths.ts';
import { FitReasons } from './fit-reasons.tsx';
import { PastPart } from './past-part.tsx';
import { SettleForm } from './settle-form.tsx';
import { SidePart } from './side-part.tsx';
import { recordOf, whoseIs } from './whose.ts';
import './finding.css';

/** One thing that does not fit: what it means, both sides of it, and where a senior settles it. */
export function FindingScreen({ id }: { readonly id: string }): JSX.Element {
  const { home } = useDesk();
  const { findings: say } = useAllWords();
  const found = findings(home).find((each) => each.id === id || each.id === decoded(id));
  if (found === undefined) {
    const action = <Button href={to(paths.findings)}>{say.back}</Button>;
    return <EmptyPage title={say.gone} action={action} />;
  }
  return <KnownFinding key={found.id} found={found} />;
}

/** An address may come with its signs still written as numbers. */
function decoded(id: string): string {
  try {
    return decodeURIComponent(id);
  } catch {
    return id;
  }
}

function KnownFinding({ found }: { readonly found: Finding }): JSX.Element {
  const { home } = useDesk();
  const words = useAllWords();
  const say = words.findings;
  const names = namesIn(home, words.refusals.somebody);
  const standing = standingOf(home, found);
  const settled = standing.state === 'settled';
  const accounts = accountsOf(home, found);
  const whose = whoseIs(home, found, names);
  const record = recordOf(home, found);
  return (
    <div class="finding-page">
      <PageHead title={words.now.findings[found.kind]}>
        <p>
          {whose.length > 0 && `${say.whose(whose)}. `}
          {settled
            ? say.settledOn(standing.settlement.at, names.staff(standing.settlement.by))
            : say.stateSaid[standing.state]}
        </p>
      </PageHead>
      <p class="finding-why">{say.why[found.kind]}</p>
      {!settled && <Held found={found} />}
      <FitReasons found={found} />
      <Part
        title={say.sides}
        action={
          record !== undefined && (
            <Button icon="note" href={to(record)}>
              {say.amend}
            </Button>
          )
        }
      >
        <ol class="finding-sides">
          {accounts.map((account, at) => (
            <SidePart
              key={account.keeps}
              account={account}
              title={say.side(at + 1, accounts.length)}
            />
          ))}
        </ol>
      </Part>
      <PastPart found={found} />
      {settled ? (
        <Disclosure title={say.again}>
          <Settling found={found} />
        </Disclosure>
      ) : (
        <Part title={say.settle}>
          <p>{say.how[found.kind]}</p>
          <Settling found={found} />
        </Part>
      )}
      <div class="button-row">
        <Button icon="back" href={to(paths.findings)}>
          {say.back}
        </Button>
      </div>
    </div>
  );
}

/** What waits until it is settled. */
function Held({ found }: { readonly found: Finding }): JSX.Element | null {
  const { home } = useDesk();
  const words = useAllWords();
  const say = words.findings;
  const names = namesIn(home, words.refusals.somebody);
  if (found.tests.length === 0 && found.rounds.length === 0) return null;
  return (
    <Notice kind="look" title={say.heldTitle}>
      {found.tests.length > 0 ? say.held(found.tests.map(names.test)) : say.heldRound}
    </Notice>
  );
}

/** The form for whoever may settle it; for anybody else, whom to fetch. */
function Settling({ found }: { readonly found: Finding }): JSX.Element {
  const desk = useDesk();
  const { findings: say } = useAllWords();
  if (mayAs(desk, 'senior')) return <SettleForm found={found} />;
  const seniors = everyMember(desk.home).filter(
    (member) => workingHere(member, todayOf(desk)) && ranks(desk.home, member.id, 'senior'),
  );
  const title =
    seniors.length === 0 ? say.onlySeniorNone : say.onlySenior(seniors.map(({ called }) => called));
  return <Notice kind="note" title={title} />;
}
