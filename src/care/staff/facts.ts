import * as v from 'valibot';
import { factId, personId, staffId } from '../ids.ts';
import { kind, picture, replaces } from '../kind.ts';
import { day } from '../time.ts';
import { wallSpans, weekly } from '../usual-times.ts';

export const roles = ['worker', 'senior', 'manager'] as const;
export type Role = (typeof roles)[number];
export const skills = ['swab', 'record'] as const;
export type Skill = (typeof skills)[number];
export const staffFields = ['name', 'called', 'photo', 'phone'] as const;
export type StaffField = (typeof staffFields)[number];

/** A colleague's own answer, for people who ask for a woman or a man to swab; it can be kept back. */
export const worksAs = ['woman', 'man', 'unsaid'] as const;
export type WorksAs = (typeof worksAs)[number];

export const staffFacts = {
  'staff.described': kind({
    data: { staff: staffId, about: v.picklist(staffFields), replaces },
    private: { value: v.union([v.pipe(v.string(), v.maxLength(2000)), picture]) },
    files: (data) => [['staff', data.staff]],
  }),
  'staff.role': kind({
    data: { staff: staffId, role: v.picklist(roles), replaces },
    files: (data) => [['staff', data.staff]],
  }),
  /** Training seen and in date: who may swab, who may record, until which day. */
  'staff.competence': kind({
    data: { staff: staffId, skill: v.picklist(skills), until: day, replaces },
    files: (data) => [['staff', data.staff]],
  }),
  /** Knows this person by sight: needed where somebody cannot say who they are. */
  'staff.knows': kind({
    data: { staff: staffId, person: personId, knows: v.boolean(), replaces },
    files: (data) => [
      ['staff', data.staff],
      ['person', data.person],
    ],
  }),
  /** Usual hours: on which days of the week, from when until when, with which breaks and other duties. */
  'staff.hours': kind({
    data: {
      staff: staffId,
      hours: v.pipe(v.array(weekly), v.maxLength(7)),
      away: wallSpans,
      replaces,
    },
    files: (data) => [['staff', data.staff]],
  }),
  /** Two who are not to work as a pair. No reason is kept. */
  'staff.apart': kind({
    data: { staff: staffId, other: staffId, apart: v.boolean(), replaces },
    files: (data) => [
      ['staff', data.staff],
      ['staff', data.other],
    ],
  }),
  /** Theirs alone to give and take back. Private, so that it can be erased when they go. */
  'staff.works-as': kind({
    data: { staff: staffId, replaces },
    private: { as: v.picklist(worksAs) },
    files: (data) => [['staff', data.staff]],
  }),
  'staff.left': kind({
    data: { staff: staffId, on: day, replaces },
    files: (data) => [['staff', data.staff]],
  }),
  /** Back at work, or never gone: stands in for the leaving it names. */
  'staff.returned': kind({
    data: { staff: staffId, on: day, replaces: v.pipe(v.array(factId), v.minLength(1)) },
    files: (data) => [['staff', data.staff]],
  }),
};
