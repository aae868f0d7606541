import type { JSX } from 'preact';
import { useMemo, useState } from 'preact/hooks';
import { allow } from '../../../care/refusal.ts';
import type { ReportSource } from '../../../care/results/facts.ts';
import type { ReportedResult } from '../../../exchange/results/reported.ts';
import { placeText } from '../../../exchange/results/reported.ts';
import type { Fate, Mapping } from '../../../procedures/take-in-results.ts';
import { fateOf, rememberMapping, takeInResults } from '../../../procedures/take-in-results.ts';
import { useDesk } from '../../desk/desk.ts';
import { namesIn } from '../../desk/names.ts';
import { useAct } from '../../desk/use-act.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { Part } from '../../pieces/page/part.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { PageHead } from '../page-head.tsx';
import { paths, to } from '../paths.ts';

export interface ToKeep {
  readonly source: ReportSource;
  readonly reports: readonly ReportedResult[];
  /** How the list was read, to be remembered; absent where the form says it by itself. */
  readonly mapping: Omit<Mapping, 'replaces'> | undefined;
}

export interface StepKeepProps {
  readonly given: ToKeep;
  readonly onBack: () => void;
  readonly onOther: () => void;
}

interface Seen {
  readonly report: ReportedResult;
  readonly fate: Fate;
}

/** What would become of every report, then one press that keeps all of them. */
export function StepKeep({ given, onBack, onOther }: StepKeepProps): JSX.Element {
  const desk = useDesk();
  const { takingIn: say, importing } = useAllWords();
  const { act, problem, busy } = useAct();
  const [kept, setKept] = useState<number | undefined>(undefined);
  const seen = useMemo(
    () =>
      given.reports.map((report) => ({ report, fate: fateOf(desk.home, report, given.source) })),
    [given, desk.home],
  );
  const of = (fate: Fate['fate']): Seen[] => seen.filter((each) => each.fate.fate === fate);
  const [linked, held, known] = [of('linked'), of('held'), of('known')];
  if (kept !== undefined) return <Kept count={kept} onOther={onOther} />;
  const fresh = linked.length + held.length;
  return (
    <>
      <PageHead title={say.checkTitle}>
        <ul class="take-in-counts">
          <li>{say.fits(linked.length)}</li>
          {held.length > 0 && <li>{say.held(held.length)}</li>}
          {known.length > 0 && <li>{say.knownBefore(known.length)}</li>}
        </ul>
      </PageHead>
      <div role="alert">{problem !== undefined && <Notice kind="stop" title={problem} />}</div>
      {held.length > 0 && (
        <Part title={say.heldTitle}>
          <p>{say.heldWhy}</p>
          <Seens seen={held} />
        </Part>
      )}
      {linked.length > 0 && (
        <Part title={say.fitsTitle}>
          <Seens seen={linked} />
        </Part>
      )}
      {fresh === 0 && <p>{say.nothing}</p>}
      <div class="button-row">
        {fresh > 0 && (
          <Button kind="main" onPress={() => void keep()}>
            {say.keep(fresh)}
          </Button>
        )}
        <Button kind="quiet" onPress={onBack}>
          {importing.check.back}
        </Button>
      </div>
    </>
  );

  async function keep(): Promise<void> {
    if (busy) return;
    let count = 0;
    // Of several reports for one test each call takes the next, and sees what the one before has done.
    for (;;) {
      const facts = await act((home, doing) => takeInResults(home, given, doing));
      if (facts === undefined) return;
      count += facts.filter((fact) => fact.kind === 'report.received').length;
      if (facts.length === 0) break;
    }
    const { mapping } = given;
    if (mapping !== undefined) await act((home) => allow(rememberMapping(home, mapping)));
    setKept(count);
  }
}

function Kept({
  count,
  onOther,
}: {
  readonly count: number;
  readonly onOther: () => void;
}): JSX.Element {
  const { takingIn: say } = useAllWords();
  return (
    <>
      <PageHead title={say.doneTitle(count)} />
      <div class="button-row">
        <Button kind="main" href={to(paths.results)}>
          {say.toResults}
        </Button>
        <Button icon="look" href={to(paths.tray)}>
          {say.toTray}
        </Button>
        <Button kind="quiet" onPress={onOther}>
          {say.other}
        </Button>
      </div>
    </>
  );
}

function Seens({ seen }: { readonly seen: readonly Seen[] }): JSX.Element {
  const desk = useDesk();
  const words = useAllWords();
  const { takingIn: say } = words;
  const names = namesIn(desk.home, words.refusals.somebody);
  return (
    <ul class="take-in-list">
      {seen.map(({ report, fate }) => {
        if (fate.fate === 'known') return null;
        const { match } = fate;
        const outcome =
          report.outcome === undefined ? say.unclear : words.results.picks[report.outcome];
        const place = placeText(report.place);
        return (
          <li key={place}>
            <p>
              <b>
                {fate.fate === 'linked' && report.reported !== undefined
                  ? say.line(names.person(match.person), outcome, report.reported)
                  : say.codeLine(report.codes[0] ?? say.noCode, outcome)}
              </b>{' '}
              <span class="soft">{say.row(place)}</span>
            </p>
            {match.replaces.length > 0 && <p>{say.corrects}</p>}
            {match.contradicts && <p>{say.contradicts}</p>}
            {match.reasons.map((reason) => (
              <p key={reason}>{words.now.trayReasons[reason]}</p>
            ))}
          </li>
        );
      })}
    </ul>
  );
}
