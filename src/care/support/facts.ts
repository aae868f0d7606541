import * as v from 'valibot';
import { factId, personId, roundId } from '../ids.ts';
import { kind, line, prose, replaces } from '../kind.ts';
import { day } from '../time.ts';

/** The support plan, a field a fact. `helps` and `stop-signs` stay in view throughout a turn. */
export const planFields = [
  'helps',
  'stop-signs',
  'yes-signs',
  'no-signs',
  'unsure-signs',
  'calm-signs',
  'triggers',
  'communication',
  'place',
  'reward',
  'never',
] as const;
export type PlanField = (typeof planFields)[number];

/** Ask a clinician before a swab. From memory, except nasal surgery and septal deviation (see docs/sources.md). */
export const cautions = [
  'nosebleed',
  'facial-injury',
  'nasal-surgery',
  'bleeding-disorder',
  'blood-thinner',
  'airway-stoma',
  'biting-risk',
  'choking-risk',
  'seizure-risk',
  'septal-deviation',
] as const;
export type Caution = (typeof cautions)[number];

export const supportFacts = {
  'support.described': kind({
    data: { person: personId, about: v.picklist(planFields), replaces },
    private: { value: v.pipe(v.string(), v.maxLength(4000)) },
    files: (data) => [['person', data.person]],
  }),
  /** The day by which the plan as a whole is looked at again. */
  'support.reviewed': kind({
    data: { person: personId, next: day, replaces },
    files: (data) => [['person', data.person]],
  }),
  /** Which sites this person tolerates, and how they show who they are. */
  'support.ways': kind({
    data: {
      person: personId,
      sites: v.picklist(['throat-and-nose', 'nose-only']),
      identity: v.picklist(['birthday', 'face']),
      selfSwab: v.boolean(),
      replaces,
    },
    files: (data) => [['person', data.person]],
  }),
  'caution.raised': kind({
    data: { person: personId, caution: v.picklist(cautions), replaces },
    private: { note: line },
    files: (data) => [['person', data.person]],
  }),
  'caution.answered': kind({
    data: {
      person: personId,
      caution: factId,
      answer: v.picklist(['go-ahead', 'nose-only', 'do-not-swab', 'no-longer-applies']),
      until: v.exactOptional(day),
      replaces,
    },
    private: { clinician: line, words: prose },
    files: (data) => [['person', data.person]],
  }),
  /** Something agreed with the doctor beforehand, so many minutes ahead. Never a dose. */
  'preparation.agreed': kind({
    data: {
      person: personId,
      what: v.picklist(['medicine', 'numbing', 'visit-first', 'other']),
      leadMinutes: v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(24 * 60)),
      until: day,
      replaces,
    },
    private: { clinician: line, words: prose },
    files: (data) => [['person', data.person]],
  }),
  'preparation.done': kind({
    data: { person: personId, round: roundId, agreed: factId, replaces },
    files: (data) => [
      ['person', data.person],
      ['round', data.round],
    ],
  }),
};
