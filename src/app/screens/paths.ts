import type { DeliveryId, FactId, PersonId, RoundId, StaffId, TestId } from '../../care/ids.ts';

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
  ways: (id: PersonId) => `/person/${id}/ways`,
  caution: (id: PersonId) => `/person/${id}/caution`,
  answerCaution: (id: PersonId, caution: FactId) => `/person/${id}/caution/${caution}`,
  preparation: (id: PersonId) => `/person/${id}/preparation`,
  whereabouts: (id: PersonId) => `/person/${id}/whereabouts`,
  symptoms: (id: PersonId) => `/person/${id}/symptoms`,
  contact: (id: PersonId) => `/person/${id}/contact`,
  knownBy: (id: PersonId) => `/person/${id}/known-by`,
  strikeOut: (id: PersonId, entry: FactId) => `/person/${id}/strike-out/${entry}`,
  staff: '/staff',
  newStaff: '/staff/new',
  importStaff: '/staff/import',
  member: (id: StaffId) => `/staff/${id}`,
  editMember: (id: StaffId) => `/staff/${id}/edit`,
  memberKnows: (id: StaffId) => `/staff/${id}/knows`,
  memberLeft: (id: StaffId) => `/staff/${id}/left`,
  kits: '/kits',
  newKits: '/kits/new',
  unpack: (kitKind: string, id: DeliveryId) => `/kits/unpack/${encodeURIComponent(kitKind)}/${id}`,
  amendDelivery: (kitKind: string, id: DeliveryId) =>
    `/kits/delivery/${encodeURIComponent(kitKind)}/${id}`,
  lot: (kitKind: string, lot: string) =>
    `/kits/lot/${encodeURIComponent(kitKind)}/${encodeURIComponent(lot)}`,
  countLot: (kitKind: string, lot: string) =>
    `/kits/lot/${encodeURIComponent(kitKind)}/${encodeURIComponent(lot)}/count`,
  recallLot: (kitKind: string, lot: string) =>
    `/kits/lot/${encodeURIComponent(kitKind)}/${encodeURIComponent(lot)}/recall`,
  kitAside: '/kits/aside',
  ppe: '/kits/ppe',
  results: '/results',
  newResult: '/results/new',
  test: (id: TestId) => `/test/${id}`,
  chase: (id: TestId) => `/test/${id}/chase`,
  act: (id: TestId) => `/test/${id}/act`,
  finding: (id: string) => `/finding/${encodeURIComponent(id)}`,
  more: '/more',
  policy: '/policy',
  confirmPolicy: '/policy/confirm',
  tablets: '/tablets',
} as const;

/** The address as a link: the app lives behind the hash, so that it opens with no server at all. */
export const to = (path: string): string => `#${path}`;
