import type { JSX } from 'preact';
import type { Fact } from '../../../care/catalogue.ts';
import type { Told } from '../../../care/rounds/story.ts';
import { instantOf } from '../../../care/time.ts';
import type { Desk } from '../../desk/desk.ts';
import { useDesk } from '../../desk/desk.ts';
import { deviceWord } from '../../desk/device-word.ts';
import { namesIn, signedBy } from '../../desk/names.ts';
import { tellFact } from '../../desk/tell/tell-fact.ts';
import type { Words } from '../../words/en.ts';
import { useWords } from '../../words/use-words.ts';
import './told.css';

/** Longer than this between the tap and the server is worth saying: the tablet had no signal. */
const LATE_MS = 10 * 60 * 1000;

interface ToldLineProps {
  readonly told: Told;
}

/** One thing that happened: when, what, who with whom, how a code came in, on which tablet, entered late. */
export function ToldLine({ told: { fact, replaced } }: ToldLineProps): JSX.Element {
  const desk = useDesk();
  const words = useWords();
  const { facts: say, dates } = words;
  const text = tellFact(fact, { home: desk.home, words });
  return (
    <li data-replaced={replaced}>
      <time dateTime={fact.at}>{dates.dayTime(fact.at)}</time>
      <div>
        <p>
          {replaced ? <s>{text}</s> : text}{' '}
          {replaced && <span class="told-mark">{say.replaced}</span>}
        </p>
        <p class="soft">
          {signedBy(fact, desk.home, words)}.{' '}
          {[...notesOf(fact, desk, words), ...journeyOf(fact, desk, words)].join(' ')}
        </p>
      </div>
    </li>
  );
}

/** What else is known of an entry, besides what it says. */
export function notesOf(fact: Fact, desk: Desk, words: Words): string[] {
  const { facts: say, testPage } = words;
  const { data } = fact;
  const names = namesIn(desk.home, words.refusals.somebody);
  return [
    ...('how' in data ? [testPage.how(say.how[data.how])] : []),
    ...('near' in data && fact.with !== undefined
      ? [testPage.secondRead(fact.with.map(names.staff).join(', '))]
      : []),
    ...('quick' in data ? [say.quick] : []),
    ...('paper' in data && fact.entered !== undefined
      ? [testPage.fromPaper(names.staff(data.paper.wrote), fact.entered)]
      : []),
    ...('replaces' in data && data.replaces.length > 0 ? [say.amends] : []),
    ...(fact.device.startsWith('S')
      ? []
      : [testPage.onTablet(deviceWord(fact.device, desk, words))]),
  ];
}

/** How it came to the server: not yet, much later, or through another tablet. */
export function journeyOf(fact: Fact, desk: Desk, words: Words): string[] {
  const { testPage: say } = words;
  const reached = desk.reached(fact);
  if (reached === undefined) return [say.waits];
  const late = reached.arrived - Date.parse(fact.entered ?? fact.at) > LATE_MS;
  return [
    ...(late ? [say.reached(instantOf(reached.arrived))] : []),
    ...(reached.via === fact.device || reached.via.startsWith('S')
      ? []
      : [say.carriedBy(deviceWord(reached.via, desk, words))]),
  ];
}
