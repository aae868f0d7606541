import * as v from 'valibot';
import { factId, personId, roundId, testId, turnId } from '../ids.ts';
import { kind, line, prose, replaces } from '../kind.ts';
import { moods } from '../practice/facts.ts';
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
  'distress-signs',
  'communication',
  'staff',
  'place',
  'time',
  'position',
  'sensory',
  'sites-tolerated',
  'reward',
  'own-scale',
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

/** Who a letter is for. */
export const readers = ['person', 'family', 'doctor'] as const;
export type Reader = (typeof readers)[number];

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
  /** How it went for the person, after a turn or at any other time. */
  'after.noted': kind({
    data: {
      person: personId,
      turn: v.exactOptional(turnId),
      mood: v.picklist(moods),
      /** On the person's own scale, if they have one: which of its words, counted from 0. */
      own: v.exactOptional(v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(20))),
      replaces,
    },
    private: {
      helped: v.pipe(v.string(), v.maxLength(500)),
      upset: v.pipe(v.string(), v.maxLength(500)),
    },
    files: (data) => [['person', data.person]],
  }),
  /** A proposal for the plan's next version was read: what was taken over and what was not. */
  'after.answered': kind({
    data: { person: personId, after: factId, accepted: v.array(v.picklist(planFields)), replaces },
    files: (data) => [['person', data.person]],
  }),
  /** Whether results of this person are told to somebody, and on whose word that was agreed. */
  'sharing.agreed': kind({
    data: {
      person: personId,
      reader: v.picklist(['family', 'doctor']),
      agreed: v.boolean(),
      word: v.picklist(['person', 'best-interests', 'attorney', 'deputy']),
      replaces,
    },
    private: { name: line },
    files: (data) => [['person', data.person]],
  }),
  /** A letter was made ready on paper. That it was read is another matter: see the actions. */
  'letter.made': kind({
    data: { person: personId, test: testId, result: factId, reader: v.picklist(readers) },
    files: (data) => [
      ['person', data.person],
      ['test', data.test],
    ],
  }),
};
