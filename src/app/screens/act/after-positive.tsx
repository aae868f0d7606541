import type { JSX } from 'preact';
import { nearTo, swabbedAfter } from '../../../care/outbreaks/near.ts';
import { isolationOf, treatmentWindow } from '../../../care/results/after-positive.ts';
import { swabsOf } from '../../../care/rounds/history.ts';
import type { Story } from '../../../care/rounds/story.ts';
import { addDays, daysBetween } from '../../../care/time.ts';
import { todayOf, useDesk } from '../../desk/desk.ts';
import { namesIn } from '../../desk/names.ts';
import { Notice } from '../../pieces/list/notice.tsx';
import { Part } from '../../pieces/page/part.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { paths, to } from '../paths.ts';

/** What runs out, from when until when, and who was near: only while the result stands as positive. */
export function AfterPositive({ story }: { readonly story: Story }): JSX.Element | null {
  const desk = useDesk();
  const words = useAllWords();
  const { afterPositive: say } = words;
  const { home } = desk;
  const swab = swabsOf(home, story.turn.person).find(({ test }) => test.id === story.test.id);
  const isolation = swab && isolationOf(home, swab);
  if (swab === undefined || isolation === undefined) return null;
  const names = namesIn(home, words.refusals.somebody);
  const near = nearTo(home, swab);
  const after = swabbedAfter(home, swab);
  const today = todayOf(desk);
  const days = Array.from({ length: daysBetween(isolation.from, isolation.until) + 1 }, (_, i) =>
    addDays(isolation.from, i),
  );
  return (
    <>
      <Part title={say.calendar}>
        <ol class="isolation-days">
          {days.map((day, i) => (
            <li key={day} aria-current={day === today ? 'date' : undefined}>
              <b>{say.dayNumber(i)}</b> {say.dayName(day)}
            </li>
          ))}
        </ol>
        <p>{say.ends(isolation.ends)}</p>
      </Part>
      <Part title={say.near}>
        <p>{say.nearWhy}</p>
        <ul class="near-list">
          {near.people.map(({ person, why }) => (
            <li key={person}>
              <a class="row-link" href={to(paths.contact(person))}>
                {say.nearLine(names.person(person), say.nearBy[why])}
              </a>
            </li>
          ))}
          {after.map((person) => (
            <li key={`after-${person}`}>
              <a class="row-link" href={to(paths.contact(person))}>
                {say.nearLine(names.person(person), say.nearBy.after)}
              </a>
            </li>
          ))}
          {near.staff.map(({ staff, on }) => (
            <li key={staff}>{say.staffLine(names.staff(staff), on)}</li>
          ))}
        </ul>
        {near.people.length + near.staff.length === 0 && <p>{say.nobody}</p>}
      </Part>
    </>
  );
}

/** Hours left in which a treatment may help: above everything else there is to do. */
export function RingNow({ story }: { readonly story: Story }): JSX.Element | null {
  const desk = useDesk();
  const { afterPositive: say } = useAllWords();
  const swab = swabsOf(desk.home, story.turn.person).find(({ test }) => test.id === story.test.id);
  const window = swab && treatmentWindow(desk.home, swab, desk.now());
  if (window === undefined) return null;
  return (
    <>
      {window.hoursLeft >= 0 && (
        <Notice kind="stop" title={say.ringNow(window.hoursLeft)}>
          {say.windowSince[window.because](window.since)} {window.source}
        </Notice>
      )}
      {window.hoursLeft < 0 && (
        <Notice kind="look" title={say.windowOver}>
          {window.source}
        </Notice>
      )}
    </>
  );
}
