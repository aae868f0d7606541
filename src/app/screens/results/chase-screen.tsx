import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { TestId } from '../../../care/ids.ts';
import { policyOn, testKindOf } from '../../../care/policy/in-force.ts';
import type { Waiting } from '../../../care/results/waiting.ts';
import { waitingFor } from '../../../care/results/waiting.ts';
import { swabsOf } from '../../../care/rounds/history.ts';
import { storyOf } from '../../../care/rounds/story.ts';
import { elapsed, HOUR } from '../../../care/time.ts';
import { chaseResult } from '../../../procedures/record-result.ts';
import type { Desk } from '../../desk/desk.ts';
import { todayOf, useDesk } from '../../desk/desk.ts';
import { namesIn } from '../../desk/names.ts';
import { KeepForm } from '../../keeping/keep-form.tsx';
import { useKeep } from '../../keeping/use-keep.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Field } from '../../pieces/form/field.tsx';
import { Part } from '../../pieces/page/part.tsx';
import { CodeText } from '../../pieces/scan/code-text.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { EmptyPage } from '../empty-page.tsx';
import { PageHead } from '../page-head.tsx';
import type { Moment } from '../parts/moment-field.tsx';
import { instantIn, MomentField } from '../parts/moment-field.tsx';
import { paths, to } from '../paths.ts';
import { LaboratoryLine } from './laboratory-line.tsx';
import './results.css';

/** Whom to ring about a late result, what to say, what was said before, and when to ring again. */
export function ChaseScreen({ test }: { readonly test: TestId }): JSX.Element {
  const desk = useDesk();
  const words = useAllWords();
  const say = words.results.chase;
  const waiting = waitingOf(desk, test);
  if (waiting === undefined) {
    return (
      <EmptyPage
        title={say.here}
        action={<Button href={to(paths.test(test))}>{words.results.open}</Button>}
      />
    );
  }
  const now = desk.now();
  const names = namesIn(desk.home, words.refusals.somebody);
  const { swab, since, dueBy, late, chased } = waiting;
  const { policy } = policyOn(desk.home, todayOf(desk));
  const kind = testKindOf(policy, swab.round?.planned.data.test ?? '');
  const code = swab.test.code ?? '';
  return (
    <>
      <PageHead title={say.title}>
        <p>
          {say.since(names.person(swab.turn.person), Math.floor(elapsed(since, now) / HOUR))}{' '}
          {late ? say.late(dueBy) : say.notLate(dueBy)}
        </p>
      </PageHead>
      {kind !== undefined && <LaboratoryLine kind={kind} />}
      <Part title={say.say}>
        <blockquote class="say-this">{say.words(code, swab.on)}</blockquote>
        <p class="chase-code">
          <CodeText code={code} />
        </p>
        <p class="field-hint">{say.noName}</p>
      </Part>
      <Part title={say.log}>
        {chased.length === 0 && <p>{say.noLog}</p>}
        <ol class="prepare-not">
          {chased.map((fact) => (
            <li key={fact.id}>
              {say.logLine(names.staff(fact.by), fact.at, fact.private?.whom ?? words.facts.erased)}{' '}
              {say.said(fact.private?.said ?? words.facts.erased)}{' '}
              {fact.data.next !== undefined && words.results.again(fact.data.next)}
            </li>
          ))}
        </ol>
      </Part>
      <ChaseForm key={chased.length} test={test} whom={kind?.laboratory.name ?? ''} />
    </>
  );
}

function waitingOf(desk: Desk, test: TestId): Waiting | undefined {
  const person = storyOf(desk.home, test)?.turn.person;
  if (person === undefined) return undefined;
  const swab = swabsOf(desk.home, person).find((each) => each.test.id === test);
  const { policy } = policyOn(desk.home, todayOf(desk));
  return swab && waitingFor(desk.home, swab, { now: desk.now(), policy });
}

function ChaseForm({
  test,
  whom: usual,
}: {
  readonly test: TestId;
  readonly whom: string;
}): JSX.Element {
  const desk = useDesk();
  const { chase: say } = useAllWords().results;
  const keep = useKeep();
  const [whom, setWhom] = useState(usual);
  const [said, setSaid] = useState('');
  const [moment, setMoment] = useState<Moment>({ day: '', time: '' });

  const submit = async (): Promise<void> => {
    const empty = { whom, said };
    const wrong = (['whom', 'said'] as const)
      .filter((field) => empty[field].trim() === '')
      .map((field) => ({ field, text: say.fill }));
    const next = instantIn(moment, desk.home.service.zone);
    await keep.keep(wrong, (_home, doing) =>
      chaseResult({ test, whom, said, ...(next !== undefined && { next }) }, doing),
    );
  };

  return (
    <Part title={say.form}>
      <KeepForm keep={keep} onKeep={submit} label={say.keep}>
        <Field
          id="whom"
          label={say.whom}
          value={whom}
          onValue={setWhom}
          problem={keep.problemOf('whom')}
        />
        <Field
          id="said"
          label={say.saidField}
          lines={3}
          value={said}
          onValue={setSaid}
          problem={keep.problemOf('said')}
        />
        <MomentField
          id="next"
          label={say.next}
          hint={say.nextHint}
          optional
          value={moment}
          onValue={setMoment}
          problem={keep.problemOf('next')}
        />
      </KeepForm>
    </Part>
  );
}
