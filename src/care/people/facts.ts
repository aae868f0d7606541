import * as v from 'valibot';
import { factId, personId, staffId, unitId } from '../ids.ts';
import { kind, line, picture, replaces } from '../kind.ts';
import { day } from '../time.ts';
import { wallSpans, weekly } from '../usual-times.ts';

/** What is kept about a person, a field a fact, so that two edits of one field can be seen to clash. */
export const personFields = [
  'name',
  'called',
  'born',
  'room',
  'identifier',
  'photo',
  'note',
] as const;
export type PersonField = (typeof personFields)[number];

/** Whom somebody may ask for to swab them. */
export const swabberWishes = ['woman', 'man'] as const;
export type SwabberWish = (typeof swabberWishes)[number];
/** Who told of a wish: the person, somebody who speaks for them, or staff who saw it. */
export const wishTellers = ['person', 'family', 'attorney', 'deputy', 'staff'] as const;
export type WishTeller = (typeof wishTellers)[number];
const someStaff = v.pipe(v.array(staffId), v.maxLength(24));

export const peopleFacts = {
  'person.described': kind({
    data: { person: personId, about: v.picklist(personFields), replaces },
    private: { value: v.union([v.pipe(v.string(), v.maxLength(2000)), picture]) },
    files: (data) => [['person', data.person]],
  }),
  'person.placed': kind({
    data: { person: personId, unit: unitId, replaces },
    files: (data) => [['person', data.person]],
  }),
  /** When a person is usually seen for a swab, and when they are usually out of the home. */
  'person.times': kind({
    data: {
      person: personId,
      windows: wallSpans,
      out: v.pipe(v.array(weekly), v.maxLength(6)),
      replaces,
    },
    files: (data) => [['person', data.person]],
  }),
  /** Whom a person wants beside them for a swab, whom not, and whether a woman or a man is to swab. */
  'person.helpers': kind({
    data: {
      person: personId,
      wanted: someStaff,
      unwanted: someStaff,
      swabber: v.exactOptional(v.picklist(swabberWishes)),
      told: v.picklist(wishTellers),
      replaces,
    },
    private: { reason: v.pipe(v.string(), v.maxLength(500)) },
    files: (data) => [['person', data.person]],
  }),
  'unit.described': kind({
    data: { unit: unitId, replaces },
    private: { value: v.pipe(v.string(), v.maxLength(200)) },
    files: (data) => [['unit', data.unit]],
  }),
  'person.came': kind({
    data: {
      person: personId,
      on: day,
      from: v.picklist(['admission', 'hospital', 'leave']),
      replaces,
    },
    files: (data) => [['person', data.person]],
  }),
  'person.went': kind({
    data: {
      person: personId,
      on: day,
      to: v.picklist(['hospital', 'leave', 'moved', 'died']),
      replaces,
    },
    files: (data) => [['person', data.person]],
  }),
  /** An entry that should never have been made (the wrong person, a slip): it no longer counts. */
  'entry.struck-out': kind({
    data: { person: personId, replaces: v.pipe(v.array(factId), v.minLength(1)) },
    private: { reason: line },
    files: (data) => [['person', data.person]],
  }),
};
