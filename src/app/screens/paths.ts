import type { PersonId, RoundId, StaffId, TestId } from '../../care/ids.ts';

/** Every address in the app. Ids mean nothing to a reader over the shoulder; no name stands in one. */
export const paths = {
  now: '/',
  rounds: '/rounds',
  newRound: '/rounds/new',
  round: (id: RoundId) => `/round/${id}`,
  editRound: (id: RoundId) => `/round/${id}/edit`,
  turn: (round: RoundId, person: PersonId) => `/round/${round}/turn/${person}`,
  pack: (id: RoundId) => `/round/${id}/pack`,
  handOver: (id: RoundId) => `/round/${id}/hand-over`,
  register: (id: RoundId) => `/round/${id}/register`,
  registerList: (id: RoundId) => `/round/${id}/register-list`,
  people: '/people',
  newPerson: '/people/new',
  importPeople: '/people/import',
  person: (id: PersonId) => `/person/${id}`,
  editPerson: (id: PersonId) => `/person/${id}/edit`,
  plan: (id: PersonId) => `/person/${id}/plan`,
  consent: (id: PersonId) => `/person/${id}/consent`,
  staff: '/staff',
  newStaff: '/staff/new',
  importStaff: '/staff/import',
  member: (id: StaffId) => `/staff/${id}`,
  kits: '/kits',
  newKits: '/kits/new',
  labels: (kitKind: string) => `/kits/labels/${encodeURIComponent(kitKind)}`,
  results: '/results',
  newResult: '/results/new',
  test: (id: TestId) => `/test/${id}`,
  chase: (id: TestId) => `/test/${id}/chase`,
  act: (id: TestId) => `/test/${id}/act`,
  finding: (id: string) => `/finding/${encodeURIComponent(id)}`,
  more: '/more',
  policy: '/policy',
  tablets: '/tablets',
} as const;

/** The address as a link: the app lives behind the hash, so that it opens with no server at all. */
export const to = (path: string): string => `#${path}`;
