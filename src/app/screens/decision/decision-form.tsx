import type { JSX, RefObject } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { packOn } from '../../../care/consent/pack-on.ts';
import type { Ask } from '../../../care/consent/path.ts';
import { asksFor, lackAt } from '../../../care/consent/path.ts';
import type { RulePack } from '../../../care/consent/rule-pack.ts';
import type { PersonId } from '../../../care/ids.ts';
import { policyOn } from '../../../care/policy/in-force.ts';
import type { Day } from '../../../care/time.ts';
import { recordDecision } from '../../../procedures/record-decision.ts';
import { missing } from '../../keeping/checks.ts';
import { OnlyFor } from '../../keeping/only-for.tsx';
import type { FormOf } from '../../keeping/use-form.ts';
import { useForm } from '../../keeping/use-form.ts';
import { KEEP_ROW } from '../../keeping/use-keep.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Choice } from '../../pieces/form/choice.tsx';
import { DateField } from '../../pieces/form/date-field.tsx';
import { ErrorSummary } from '../../pieces/form/error-summary.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { PageHead } from '../page-head.tsx';
import { paths, to } from '../paths.ts';
import type { PersonData } from '../person/person-data.ts';
import { usePerson } from '../person/person-data.ts';
import { AskPage } from './ask-page.tsx';
import type { DecisionDraft } from './draft.ts';
import { emptyDecision } from './draft.ts';
import { InForce, ReadThrough } from './read-through.tsx';

type Page = Ask | { readonly ask: 'test' } | { readonly ask: 'days' } | { readonly ask: 'read' };

/** The record of a decision, one question a page, only those that the path needs. Seniors write it. */
export function DecisionForm({ person }: { readonly person: PersonId }): JSX.Element {
  const data = usePerson(person);
  const { deciding, refusals } = data.words;
  const pack = packOn(data.desk.home, data.today);
  return (
    <OnlyFor role="senior" title={deciding.title} back={paths.person(person)}>
      {pack === undefined ? (
        <Notice kind="look" title={refusals.noRulePack} />
      ) : (
        <OpenForm {...data} pack={pack} />
      )}
    </OnlyFor>
  );
}

function OpenForm(data: PersonData & { readonly pack: RulePack }): JSX.Element {
  const { desk, words, person, today, pack } = data;
  const { deciding: say } = words;
  const { tests, decisions } = policyOn(desk.home, today).policy;
  const packUntil = decisions?.pack.until;
  const only = tests.length === 1 ? (tests[0]?.id ?? '') : '';
  const back = paths.person(person.id);
  const form = useForm<DecisionDraft>(emptyDecision(only, today), {
    title: `${say.title}: ${person.called}`,
    back,
  });
  const pages: readonly Page[] = [
    ...(only === '' ? [{ ask: 'test' } as const] : []),
    ...asksFor(pack, form.value),
    { ask: 'days' },
    { ask: 'read' },
  ];
  const at = Math.min(form.value.step, pages.length - 1);
  const page = pages[at] ?? { ask: 'read' };
  const test = tests.find(({ id }) => id === form.value.test)?.name ?? '';
  const asked = useFocusOnNext(at);
  return (
    <>
      <PageHead title={say.title}>
        <p>{say.forTest(person.called, test)}</p>
        <p class="soft">{say.stepOf(at + 1, pages.length)}</p>
      </PageHead>
      {at === 0 && (
        <>
          <Notice kind="note" title={say.caution}>
            {say.force} {say.oneOnly}
          </Notice>
          <InForce {...data} test={form.value.test} />
          <p class="soft">{say.law(pack.title, pack.version)}</p>
          {packUntil !== undefined && packUntil < today && (
            <Notice kind="look" title={words.policy.amend.packLate(packUntil)} />
          )}
        </>
      )}
      <ErrorSummary problems={form.keep.problems} attempt={form.keep.attempt} />
      <form
        ref={asked}
        class="record-form"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          void onward();
        }}
      >
        {page.ask === 'test' && (
          <Choice
            {...form.bind('test')}
            label={say.which}
            options={tests.map(({ id, name }) => ({ value: id, label: name }))}
          />
        )}
        {page.ask === 'days' && <DaysPage form={form} words={words} />}
        {page.ask === 'read' && <ReadThrough form={form} pack={pack} words={words} />}
        {isAsk(page) && <AskPage form={form} pack={pack} ask={page} words={words} />}
        <div id={KEEP_ROW} class="button-row" tabIndex={-1}>
          <Button kind="main" submit>
            {page.ask === 'read' ? say.keep : say.next}
          </Button>
          {at === 0 ? (
            <Button kind="quiet" href={to(back)}>
              {words.keeping.back}
            </Button>
          ) : (
            <Button kind="quiet" onPress={() => form.set({ step: at - 1 })}>
              {say.back}
            </Button>
          )}
        </div>
      </form>
    </>
  );

  async function onward(): Promise<void> {
    if (page.ask !== 'read') {
      if (form.keep.fine(wrongOn(page, data, form))) form.set({ step: at + 1 });
      return;
    }
    const { from, review, until, test: kind } = form.value;
    const days = { from: from as Day, review: review as Day, until: until as Day };
    await form.submit([], (home, doing) =>
      recordDecision(home, { person: person.id, test: kind, answers: form.value, ...days }, doing),
    );
  }
}

/** Once somebody went on or back, the focus is on the question, not on the button that led there. */
function useFocusOnNext(at: number): RefObject<HTMLFormElement> {
  const form = useRef<HTMLFormElement>(null);
  const before = useRef(at);
  useLayoutEffect(() => {
    if (before.current === at) return;
    before.current = at;
    form.current?.querySelector<HTMLElement>('input, textarea, select, h2')?.focus();
  }, [at]);
  return form;
}

const isAsk = (page: Page): page is Ask =>
  page.ask !== 'test' && page.ask !== 'days' && page.ask !== 'read';

function wrongOn(
  page: Page,
  { words, pack }: PersonData & { readonly pack: RulePack },
  { value }: FormOf<DecisionDraft>,
): { field: string; text: string }[] {
  const { refusals, keeping } = words;
  if (page.ask === 'test') return missing({ test: value.test }, keeping.pickOne);
  if (page.ask === 'days') {
    const { from, review, until } = value;
    return missing({ from, review, until }, keeping.fillIn);
  }
  if (page.ask === 'read') return [];
  return lackAt(pack, value, page).map(({ at, why }) => ({
    field:
      why === 'not-told'
        ? 'told'
        : why === 'limb-unanswered'
          ? `limb-${at}`
          : why === 'document-unsaid'
            ? 'paper'
            : at,
    text: refusals.lacks[why],
  }));
}

function DaysPage({
  form,
  words,
}: Pick<PersonData, 'words'> & { readonly form: FormOf<DecisionDraft> }): JSX.Element {
  const { deciding: say } = words;
  return (
    <>
      <h2>{say.days}</h2>
      <DateField {...form.bind('from')} label={say.from} />
      <DateField
        {...form.bind('review')}
        label={say.review}
        hint={say.reviewHint}
        min={form.value.from}
      />
      <DateField
        {...form.bind('until')}
        label={say.until}
        hint={say.untilHint}
        min={form.value.from}
      />
    </>
  );
}
