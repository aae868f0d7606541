import type { Page } from 'playwright-core';
import type { paths } from '../../../src/app/screens/paths.ts';
import type { RehearsalPage } from '../browser.ts';

/** What was done beforehand, so that every page has something to show. */
export interface Made {
  /** One round that was sent, with the codes of its tests; and one being swabbed. */
  readonly sent: string;
  readonly codes: readonly string[];
  readonly tests: readonly string[];
  readonly open: string;
  readonly delivery: string;
  /** Somebody and a caution of theirs. */
  readonly caution: readonly [person: string, fact: string];
  readonly decision: string;
  readonly entry: string;
}

const travellers = ['corwenvale1', 'orielfinch3', 'sabraquill2'] as const;

export const makeRounds = (page: Page): Promise<Made> =>
  page.evaluate(async (who) => {
    const { rehearsal: it } = globalThis as unknown as RehearsalPage;
    const { round: sent, codes } = await it.send(who);
    const open = await it.plan(['bramhollow5', 'ismaythorn6', 'rowanvale02']);
    const facts = [...it.desk().home.known.values()];
    const last = (kind: string, person?: string) => {
      const found = facts.findLast(
        (fact) => fact.kind === kind && [undefined, fact.data.person].includes(person),
      );
      if (found === undefined) throw new Error(`no ${kind}`);
      return found;
    };
    const testOf = (code: string) =>
      facts.find((fact) => fact.kind === 'kit.opened' && fact.data.code === code)?.data.test ?? '';
    const caution = last('caution.raised');
    return {
      ...{ sent, codes, open, tests: codes.map(testOf) },
      delivery: last('kits.delivered').data.delivery ?? '',
      caution: [caution.data.person ?? '', caution.id] as const,
      decision: last('consent.decided', 'tamsinoake4').id,
      entry: last('support.described', who[0]).id,
    };
  }, travellers);

/** A page is looked at here, or in the tests of the records and of the story of a test. */
type Look = ((all: Made) => string) | 'records' | 'story';

/** Every address there is: one that is added is added here, or this file is no longer right. */
export const addresses: Readonly<Record<keyof typeof paths, Look>> = {
  now: () => '/',
  rounds: () => '/rounds',
  newRound: () => '/rounds/new',
  round: ({ open }) => `/round/${open}`,
  editRound: ({ open }) => `/round/${open}/edit`,
  replan: ({ open }) => `/round/${open}/replan`,
  runSheet: ({ open }) => `/round/${open}/sheet`,
  paper: ({ open }) => `/round/${open}/paper`,
  paperTurn: ({ open }) => `/round/${open}/paper/rowanvale02`,
  turn: ({ open }) => `/round/${open}/turn/rowanvale02`,
  pack: ({ open }) => `/round/${open}/pack`,
  handOver: ({ sent }) => `/round/${sent}/hand-over`,
  register: ({ sent }) => `/round/${sent}/register`,
  registerList: ({ sent }) => `/round/${sent}/register-list`,
  upload: ({ sent }) => `/round/${sent}/upload`,
  setUpload: () => '/upload/respiratory',
  people: 'records',
  newPerson: 'records',
  importPeople: 'records',
  wholeHome: 'records',
  callOffWholeHome: 'records',
  person: 'records',
  editPerson: 'records',
  plan: 'records',
  consent: 'records',
  decision: ({ decision }) => `/person/tamsinoake4/decision/${decision}`,
  practice: 'records',
  practiceSession: 'records',
  strip: 'records',
  booklet: 'records',
  story: 'records',
  after: 'records',
  sharing: 'records',
  letter: ({ tests: [test] }) => `/person/${travellers[0]}/letter/${test}/person`,
  times: 'records',
  helpers: () => '/person/hesperlund7/helpers',
  ways: 'records',
  caution: 'records',
  answerCaution: ({ caution: [who, fact] }) => `/person/${who}/caution/${fact}`,
  preparation: 'records',
  whereabouts: 'records',
  symptoms: 'records',
  contact: 'records',
  knownBy: 'records',
  strikeOut: ({ entry }) => `/person/${travellers[0]}/strike-out/${entry}`,
  staff: 'records',
  newStaff: 'records',
  importStaff: 'records',
  member: 'records',
  editMember: 'records',
  memberKnows: 'records',
  memberHours: 'records',
  worksAs: () => '/staff/marenholt1/works-as',
  memberLeft: 'records',
  kits: 'records',
  newKits: 'records',
  labels: () => '/kits/labels/single-swab',
  unpack: ({ delivery }) => `/kits/unpack/single-swab/${delivery}`,
  amendDelivery: ({ delivery }) => `/kits/delivery/single-swab/${delivery}`,
  lot: 'records',
  countLot: 'records',
  recallLot: 'records',
  kitAside: 'records',
  ppe: 'records',
  results: () => '/results',
  newResult: () => '/results/new',
  takeIn: () => '/results/take-in',
  tray: () => '/results/tray',
  report: () => '/results/tray/none',
  callList: () => '/results/calls',
  houseChance: () => '/results/house',
  test: 'story',
  evidence: 'story',
  chase: ({ tests: [, test] }) => `/test/${test}/chase`,
  act: ({ tests: [test] }) => `/test/${test}/act`,
  findings: 'story',
  finding: 'story',
  more: 'records',
  policy: 'records',
  confirmPolicy: 'records',
  amendLadder: () => '/policy/practice',
  amendDeciding: () => '/policy/decisions',
  tablets: () => '/tablets',
};
