import type { Authority } from '../src/care/consent/facts.ts';
import type { SwabberWish, WishTeller } from '../src/care/people/facts.ts';
import type { Role, WorksAs } from '../src/care/staff/facts.ts';
import type { Caution, PlanField } from '../src/care/support/facts.ts';
import type { Features } from './portraits.ts';

export interface DemoPerson {
  readonly id: string;
  readonly name: string;
  readonly called: string;
  readonly born: string;
  readonly room: string;
  readonly unit: 'Garden side' | 'Hill side';
  readonly face: Features;
  readonly authority: Authority;
  /** Days before today on which the decision ends; negative for days still to come. */
  readonly decisionEndedDaysAgo: number;
  readonly sites: 'throat-and-nose' | 'nose-only';
  readonly identity: 'birthday' | 'face';
  readonly plan: Partial<Record<PlanField, string>>;
  /** By whom they want to be helped; colleagues by id. */
  readonly helpers?: {
    readonly swabber?: SwabberWish;
    readonly wanted?: readonly string[];
    readonly unwanted?: readonly string[];
    readonly told: WishTeller;
    readonly reason: string;
  };
  readonly caution?: {
    readonly caution: Caution;
    readonly note: string;
    readonly answered: boolean;
  };
}

const skins = ['#f0cfae', '#e3b58c', '#c98f63', '#8d5a3b', '#f5dcc4'] as const;
const yes = 'Nods, or says "go on then".';
const no = 'Shakes head, or says "not today".';
const unsure = 'Looks at staff and waits. Ask later.';

/** Everybody here is invented; any likeness is chance. */
export const people: readonly DemoPerson[] = [
  {
    ...{ id: 'corwenvale1', name: 'Corwen Vale', called: 'Cor', born: '1951-03-14', room: '3' },
    unit: 'Garden side',
    face: { skin: skins[0], hair: '#9aa0a3', cut: 'short', top: '#3f6a74', glasses: true },
    ...{ authority: 'asks-each-time', decisionEndedDaysAgo: -160 },
    ...{ sites: 'throat-and-nose', identity: 'birthday' },
    plan: {
      helps: 'Count aloud with him. Let him hold the tissue. Radio off.',
      'stop-signs': 'turns to the wall or hums.',
      ...{
        'yes-signs': 'Says "aye" and looks up.',
        'no-signs': 'Turns to the wall.',
        'unsure-signs': unsure,
      },
      reward: 'A walk to the gate.',
      place: 'His armchair, by the window.',
    },
  },
  {
    ...{ id: 'rowanvale02', name: 'Rowan Vale', called: 'Rowan', born: '1957-03-14', room: '8' },
    unit: 'Hill side',
    face: { skin: skins[0], hair: '#6b4a2f', cut: 'bob', top: '#7b5a2b' },
    ...{ authority: 'asks-each-time', decisionEndedDaysAgo: -160 },
    ...{ sites: 'throat-and-nose', identity: 'birthday' },
    plan: {
      helps: 'Tell her each step before you do it.',
      'stop-signs': 'puts her hand up flat.',
      ...{ 'yes-signs': yes, 'no-signs': no, 'unsure-signs': unsure },
      reward: 'Tea in the blue cup.',
    },
  },
  {
    ...{ id: 'orielfinch3', name: 'Oriel Finch', called: 'Oriel', born: '1948-06-02', room: '1' },
    unit: 'Garden side',
    face: { skin: skins[1], hair: '#d9d3c5', cut: 'bun', top: '#5b4a7a', glasses: true },
    ...{ authority: 'asks-each-time', decisionEndedDaysAgo: -90 },
    ...{ sites: 'throat-and-nose', identity: 'birthday' },
    plan: {
      helps: 'Sit beside her, not in front. Speak slowly.',
      'stop-signs': 'shuts her mouth tight.',
      ...{
        'yes-signs': 'Smiles and opens her mouth.',
        'no-signs': 'Shuts her mouth.',
        'unsure-signs': unsure,
      },
      reward: 'The crossword together.',
    },
  },
  {
    ...{ id: 'tamsinoake4', name: 'Tamsin Oake', called: 'Tamsin', born: '1962-11-20', room: '2' },
    unit: 'Garden side',
    face: { skin: skins[2], hair: '#2b1d14', cut: 'curls', top: '#9c5f39' },
    ...{ authority: 'best-interests', decisionEndedDaysAgo: -40 },
    ...{ sites: 'throat-and-nose', identity: 'face' },
    plan: {
      helps: 'Show her the picture strip. Sing the kettle song.',
      'stop-signs': 'pulls her sleeve over her face.',
      'yes-signs': 'Takes the tissue from you.',
      'no-signs': 'Pushes the tissue away.',
      'unsure-signs': 'Rocks. Wait until she is still.',
      reward: 'Ten minutes with the drum.',
      never: 'Never come from behind.',
    },
  },
  {
    ...{ id: 'bramhollow5', name: 'Bram Hollow', called: 'Bram', born: '1970-01-02', room: '4' },
    unit: 'Hill side',
    face: { skin: skins[3], hair: '#1c1512', cut: 'short', top: '#3a5a3a', beard: true },
    ...{ authority: 'asks-each-time', decisionEndedDaysAgo: -200 },
    ...{ sites: 'throat-and-nose', identity: 'birthday' },
    plan: {
      helps: 'Be quick and plain. He likes to know how long.',
      'stop-signs': 'says "enough".',
      ...{
        'yes-signs': 'Says "do it".',
        'no-signs': 'Says "no" or walks off.',
        'unsure-signs': unsure,
      },
      reward: 'Out to the workshop.',
    },
    helpers: { unwanted: ['wystanroe5'], told: 'person', reason: 'Says "not him".' },
  },
  {
    ...{ id: 'ismaythorn6', name: 'Ismay Thorn', called: 'Ismay', born: '1948-07-14', room: '5' },
    unit: 'Hill side',
    face: { skin: skins[4], hair: '#cfc9bb', cut: 'long', top: '#8a3f52' },
    ...{ authority: 'asks-each-time', decisionEndedDaysAgo: -30 },
    ...{ sites: 'throat-and-nose', identity: 'birthday' },
    plan: {
      helps: 'Warm your hands first. Keep the curtain half shut.',
      'stop-signs': 'says "mind now" or grips the chair.',
      ...{ 'yes-signs': yes, 'no-signs': no, 'unsure-signs': unsure },
      reward: 'A barley sugar.',
    },
  },
  {
    ...{ id: 'hesperlund7', name: 'Hesper Lund', called: 'Hesper', born: '1939-09-09', room: '6' },
    unit: 'Garden side',
    face: { skin: skins[0], hair: '#e7e3da', cut: 'curls', top: '#4a6f8a', glasses: true },
    ...{ authority: 'attorney', decisionEndedDaysAgo: -120 },
    ...{ sites: 'nose-only', identity: 'face' },
    plan: {
      helps: 'After her walk. Hold her left hand.',
      'stop-signs': 'looks at the door.',
      'yes-signs': 'Squeezes your hand.',
      'no-signs': 'Takes her hand away.',
      'unsure-signs': 'Says "later, later".',
      reward: 'A postcard to look at.',
    },
    helpers: { swabber: 'woman', told: 'attorney', reason: 'All her life only women helped her.' },
  },
  {
    ...{ id: 'linnetgrey8', name: 'Linnet Grey', called: 'Lin', born: '1966-04-27', room: '7' },
    unit: 'Hill side',
    face: { skin: skins[1], hair: '#7a2f1d', cut: 'bob', top: '#55632a' },
    ...{ authority: 'asks-each-time', decisionEndedDaysAgo: -75 },
    ...{ sites: 'throat-and-nose', identity: 'birthday' },
    plan: {
      helps: 'She swabs herself if you hold the mirror.',
      'stop-signs': 'puts the swab down.',
      ...{ 'yes-signs': 'Reaches for the swab.', 'no-signs': no, 'unsure-signs': unsure },
      reward: 'Her programme on the radio.',
    },
  },
  {
    ...{ id: 'fennharrow9', name: 'Fenn Harrow', called: 'Fenn', born: '1974-08-30', room: '9' },
    unit: 'Hill side',
    face: { skin: skins[2], hair: '#3c2a1e', cut: 'short', top: '#2f4858' },
    ...{ authority: 'best-interests', decisionEndedDaysAgo: -20 },
    ...{ sites: 'nose-only', identity: 'face' },
    plan: {
      helps: 'Same chair, same two staff. Ear defenders on.',
      'stop-signs': 'holds his breath or pushes your wrist.',
      'yes-signs': 'Sits down in the chair.',
      'no-signs': 'Stands up.',
      'unsure-signs': 'Taps the table. Wait.',
      reward: 'The lift, up and down.',
      never: 'Never touch his shoulders.',
    },
    helpers: {
      ...{ wanted: ['piadell004', 'sorrelwade'], told: 'staff' },
      reason: 'He is calm with these two.',
    },
  },
  {
    ...{
      id: 'marlowbeck0',
      name: 'Marlow Beck',
      called: 'Mr Beck',
      born: '1944-12-11',
      room: '10',
    },
    unit: 'Garden side',
    face: { skin: skins[4], hair: '#b9b4a8', cut: 'bald', top: '#6d6a4f', glasses: true },
    ...{ authority: 'asks-each-time', decisionEndedDaysAgo: -300 },
    ...{ sites: 'throat-and-nose', identity: 'birthday' },
    plan: {
      helps: 'Call him Mr Beck. Give him time to answer.',
      'stop-signs': 'says "that will do".',
      ...{ 'yes-signs': yes, 'no-signs': no, 'unsure-signs': unsure },
      reward: 'The newspaper first.',
    },
  },
  {
    ...{ id: 'perrinash11', name: 'Perrin Ash', called: 'Perrin', born: '1981-02-18', room: '11' },
    unit: 'Hill side',
    face: { skin: skins[3], hair: '#2a1a12', cut: 'curls', top: '#a2552f' },
    ...{ authority: 'asks-each-time', decisionEndedDaysAgo: -60 },
    ...{ sites: 'throat-and-nose', identity: 'birthday' },
    plan: {
      helps: 'Show the clock. He counts the ten with you.',
      'stop-signs': 'crosses his arms.',
      ...{ 'yes-signs': 'Thumbs up.', 'no-signs': 'Thumbs down.', 'unsure-signs': unsure },
      reward: 'First go at the pool table.',
    },
  },
  {
    ...{ id: 'sabraquill2', name: 'Sabra Quill', called: 'Sabra', born: '1959-05-05', room: '12' },
    unit: 'Garden side',
    face: { skin: skins[1], hair: '#4a4a4a', cut: 'bun', top: '#3d6b5a' },
    ...{ authority: 'asks-each-time', decisionEndedDaysAgo: -100 },
    ...{ sites: 'throat-and-nose', identity: 'birthday' },
    plan: {
      helps: 'Look her in the face when you speak. She reads lips.',
      'stop-signs': 'waves both hands.',
      ...{ 'yes-signs': yes, 'no-signs': 'Waves both hands.', 'unsure-signs': unsure },
      reward: 'A turn in the garden.',
    },
  },
  {
    ...{ id: 'odilemarsh3', name: 'Odile Marsh', called: 'Odile', born: '1953-10-23', room: '13' },
    unit: 'Garden side',
    face: { skin: skins[0], hair: '#a3683a', cut: 'long', top: '#705a8a' },
    // Held: this decision ended last week and nobody has looked at it again.
    ...{ authority: 'best-interests', decisionEndedDaysAgo: 6 },
    ...{ sites: 'throat-and-nose', identity: 'birthday' },
    plan: {
      helps: 'Let her finish her sentence first.',
      'stop-signs': 'says "stop it now".',
      ...{ 'yes-signs': yes, 'no-signs': no, 'unsure-signs': unsure },
    },
  },
  {
    ...{ id: 'joryfell014', name: 'Jory Fell', called: 'Jory', born: '1963-01-31', room: '14' },
    unit: 'Hill side',
    face: { skin: skins[4], hair: '#5f5f5f', cut: 'short', top: '#4f5d2f', beard: true },
    ...{ authority: 'asks-each-time', decisionEndedDaysAgo: -110 },
    ...{ sites: 'throat-and-nose', identity: 'birthday' },
    plan: {
      helps: 'Tell him a joke. Any joke.',
      'stop-signs': 'goes quiet.',
      ...{ 'yes-signs': yes, 'no-signs': no, 'unsure-signs': unsure },
    },
    caution: { caution: 'blood-thinner', note: 'Tablets twice a day.', answered: true },
  },
];

export interface DemoStaff {
  readonly id: string;
  readonly name: string;
  readonly role: Role;
  readonly pin: string;
  /** Days from today until the training ends. */
  readonly swabs: number;
  readonly records: number;
  /** Their own answer, where they gave one. */
  readonly worksAs?: WorksAs;
}

/** PINs of the demo alone: a real service gives each person their own. */
export const staff: readonly DemoStaff[] = [
  {
    id: 'marenholt1',
    name: 'Maren Holt',
    role: 'manager',
    pin: '284617',
    swabs: 300,
    records: 300,
    worksAs: 'woman',
  },
  {
    id: 'sorrelwade',
    name: 'Sorrel Wade',
    role: 'senior',
    pin: '730952',
    swabs: 210,
    records: 210,
  },
  {
    id: 'jonahmarsh',
    name: 'Jonah Marsh',
    role: 'senior',
    pin: '518264',
    swabs: 120,
    records: 400,
    worksAs: 'man',
  },
  {
    id: 'piadell004',
    name: 'Pia Dell',
    role: 'worker',
    pin: '396071',
    swabs: 180,
    records: 180,
    worksAs: 'woman',
  },
  {
    id: 'wystanroe5',
    name: 'Wystan Roe',
    role: 'worker',
    pin: '642815',
    swabs: 60,
    records: 60,
    worksAs: 'unsaid',
  },
  { id: 'wrenadair6', name: 'Wren Adair', role: 'worker', pin: '857403', swabs: 9, records: 250 },
  { id: 'idrissole7', name: 'Idris Sole', role: 'worker', pin: '170538', swabs: -12, records: 150 },
  {
    id: 'gildafern8',
    name: 'Gilda Fern',
    role: 'worker',
    pin: '925746',
    swabs: 90,
    records: 90,
    worksAs: 'woman',
  },
];
