import type { JSX } from 'preact';
import { consentOn } from '../../../care/consent/decision.ts';
import type { PersonId } from '../../../care/ids.ts';
import { personOf } from '../../../care/people/person.ts';
import type { Reminder } from '../../../care/rounds/readiness.ts';
import { readinessOf } from '../../../care/rounds/readiness.ts';
import { sayRefusal } from '../../desk/say-refusal.ts';
import { Bead } from '../../pieces/frame/bead.tsx';
import type { AllWords } from '../../words/en-all.ts';
import { useAllWords } from '../../words/use-all-words.ts';
import { sayReminder } from '../say-reminder.ts';
import type { Prepare } from './use-prepare.ts';
import { whomToSee } from './whom-to-see.ts';

/** What is in place for one person, what is still to do, and what keeps them from being swabbed. */
export function ReadyLine({
  person,
  prepare,
}: {
  readonly person: PersonId;
  readonly prepare: Prepare;
}): JSX.Element {
  const words = useAllWords();
  const { desk, draft } = prepare;
  const { home } = desk;
  const { day: on, test } = draft;
  const ready = readinessOf(home, person, {
    ...{ test, on },
    ...(draft.round !== undefined && { round: draft.round }),
  });
  const consent = consentOn(home, person, test, on);
  const decided =
    consent.state === 'decided' ? [words.prepare.decisionUntil(consent.decision.data.until)] : [];
  const said = [...decided, ...ready.reminders.map((each) => sayBefore(each, words))];
  const held = ready.holds.length > 0;
  return (
    <li class="ready-line">
      <Bead state={held ? 'look' : 'todo'} />
      <div>
        <p class="order-name">{personOf(home, person).called}</p>
        {ready.holds.map((hold) => (
          <p key={JSON.stringify(hold)} class="candidate-hold">
            {sayRefusal(hold, { words, home })} {words.prepare.see[whomToSee(hold)]}
          </p>
        ))}
        <p class="order-why">{said.length === 0 ? words.prepare.ready : said.join(' ')}</p>
      </div>
    </li>
  );
}

/** While a round is prepared some are told otherwise: there is still time to do something about them. */
function sayBefore(reminder: Reminder, words: AllWords): string {
  const { prepare: say, facts } = words;
  switch (reminder.remind) {
    case 'ask-consent':
      return say.askConsent;
    case 'no-plan':
      return say.noPlan;
    case 'preparation': {
      const what = facts.preparations[reminder.what];
      return reminder.done
        ? say.preparationDone(what)
        : say.preparation(what, reminder.leadMinutes);
    }
    default:
      return sayReminder(reminder, words);
  }
}
