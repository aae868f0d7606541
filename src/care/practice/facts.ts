import * as v from 'valibot';
import { personId } from '../ids.ts';
import { kind, replaces, word } from '../kind.ts';

const minutes = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(240));

/** How a session of practice, or a turn, was for the person: in the words of the record. */
export const moods = ['calm', 'uneasy', 'distressed'] as const;
export type Mood = (typeof moods)[number];

/** What came of the step: done, not this time, or it frightened them. */
export const stepEnds = ['done', 'not-yet', 'distressed'] as const;
export type StepEnd = (typeof stepEnds)[number];

export const practiceFacts = {
  /** Their plan asks for practice from this step on, or no longer does. */
  'practice.asked': kind({
    data: { person: personId, wanted: v.boolean(), from: v.exactOptional(word), replaces },
    files: (data) => [['person', data.person]],
  }),
  /** One session, one step. */
  'practice.session': kind({
    data: {
      person: personId,
      step: word,
      end: v.picklist(stepEnds),
      minutes: v.exactOptional(minutes),
      /** Went back to something easy and well known before the end, so that it ended well. */
      endedWell: v.boolean(),
      replaces,
    },
    files: (data) => [
      ['person', data.person],
      ['practice', 'home'],
    ],
  }),
};
