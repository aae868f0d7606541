import * as v from 'valibot';
import { factId, personId } from '../ids.ts';
import { kind, line, replaces } from '../kind.ts';
import { day } from '../time.ts';

export const symptoms = [
  'cough',
  'fever',
  'breathless',
  'sore-throat',
  'runny-nose',
  'tired',
  'not-eating',
  'confused',
  'loose-stools',
  'loss-of-taste',
  'not-themselves',
] as const;
export type Symptom = (typeof symptoms)[number];

export const outbreakFacts = {
  'symptoms.noticed': kind({
    data: { person: personId, on: day, signs: v.array(v.picklist(symptoms)), replaces },
    private: { note: v.pipe(v.string(), v.maxLength(500)) },
    files: (data) => [['person', data.person]],
  }),
  'contact.noted': kind({
    data: { person: personId, on: day, source: v.exactOptional(personId), replaces },
    private: { note: v.pipe(v.string(), v.maxLength(500)) },
    files: (data) => [['person', data.person]],
  }),
  /** The manager, or the health protection team, says the whole home is tested on this day. */
  'home.tested-on': kind({
    data: { on: day, replaces },
    private: { askedBy: line },
    files: () => [['policy', 'home-rounds']],
  }),
  /** The whole home was asked for by mistake, or whoever asked has taken it back. */
  'home.called-off': kind({
    data: { replaces: v.pipe(v.array(factId), v.minLength(1)) },
    private: { reason: line },
    files: () => [['policy', 'home-rounds']],
  }),
};
