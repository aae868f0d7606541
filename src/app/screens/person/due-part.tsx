import type { JSX } from 'preact';
import type { PersonDue } from '../../../care/record/due.ts';
import { dueFor } from '../../../care/record/due.ts';
import type { Refusal } from '../../../care/refusal.ts';
import type { DueLine } from '../../../care/rounds/due.ts';
import { sayRefusal } from '../../desk/say-refusal.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { Part } from '../../pieces/page/part.tsx';
import type { AllWords } from '../../words/en-all.ts';
import { paths, to } from '../paths.ts';
import { sayReminder } from '../say-reminder.ts';
import type { PersonData } from './person-data.ts';

/** For each kind of test: due or not and by which rule, what holds it, and what to know beforehand. */
export function DuePart(data: PersonData): JSX.Element {
  const { desk, words, person, today } = data;
  return (
    <Part title={words.record.parts.due}>
      {dueFor(desk.home, person.id, today, desk.now()).map((due) => (
        <DueTest key={due.test.id} {...data} due={due} />
      ))}
    </Part>
  );
}

function DueTest(data: PersonData & { readonly due: PersonDue }): JSX.Element {
  const { words, due, person } = data;
  const { holds, reminders } = due.readiness;
  const said = reminders.map((each) => sayReminder(each, words));
  const elsewhere = person.whereabouts.where !== 'here';
  const shown = holds.filter(({ reason }) => reason !== 'away' || !elsewhere);
  return (
    <div class="due-test">
      <h3>{due.test.name}</h3>
      <ul class="due-lines">
        {dueLines(due.line, words).map((line) => (
          <li key={line}>{line}</li>
        ))}
        {shown.length === 0 && !elsewhere && <li>{words.record.due.ready}</li>}
        {said.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      {shown.map((hold) => (
        <Hold key={JSON.stringify(hold)} {...data} hold={hold} />
      ))}
    </div>
  );
}

function dueLines(line: DueLine | undefined, words: AllWords): string[] {
  const say = words.record.due;
  if (line === undefined) return [say.notDue];
  const reasons = line.reasons.map(({ rule, by }) => say.by(words.rules[rule], by));
  switch (line.excluded?.why) {
    case 'away':
      return [say.away(line.excluded.since)];
    case 'recent-positive':
      return [say.recentPositive(line.excluded.until)];
    case 'awaiting-result':
      return [say.awaitingResult(line.excluded.since)];
    case undefined:
      return reasons;
  }
}

/** What keeps a swab from going ahead, with the way to put it right. */
function Hold({ desk, words, person, hold }: PersonData & { readonly hold: Refusal }): JSX.Element {
  const fix = fixFor(hold);
  return (
    <Notice
      kind="look"
      title={sayRefusal(hold, { words, home: desk.home })}
      action={fix && <Button href={to(fix.path)}>{fix.label}</Button>}
    />
  );

  function fixFor({ reason }: Refusal): { path: string; label: string } | undefined {
    const say = words.record;
    switch (reason) {
      case 'consent-missing':
      case 'consent-ended':
      case 'consent-other-test':
      case 'consent-nobody':
      case 'decision-review-due':
      case 'document-not-seen':
        return { path: paths.consent(person.id), label: say.decide };
      case 'plan-review-due':
      case 'plan-in-conflict':
        return { path: paths.plan(person.id), label: say.amendPlan };
      case 'photo-missing':
      case 'birthday-missing':
        return { path: paths.editPerson(person.id), label: say.amend };
      default:
        return undefined;
    }
  }
}
