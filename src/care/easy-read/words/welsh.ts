import type { english } from './english.ts';
import { both, sentence } from './english.ts';

/** Welsh, as a second language. Nobody whose language it is has read it yet: it says so wherever it is used. */
export function welsh(): ReturnType<typeof english> {
  return {
    code: 'cy',
    checked: false,
    name: 'Cymraeg',
    cards: {
      why: () => 'Mae prawf yn dangos a wyt ti’n sâl. Mae’n ein helpu i ofalu amdanat ti.',
      who: ({ staff }) =>
        staff.length === 0 ? 'Bydd dau ohonom yn dod.' : `Bydd ${both(staff, 'a')} yn dod.`,
      mask: () => 'Maen nhw’n gwisgo mwgwd a menig. Yr un bobl ydyn nhw.',
      yes: () => 'Yn gyntaf maen nhw’n gofyn i ti. Cei di ddweud ie. Cei di ddweud na.',
      help: ({ helps }) => `Mae hyn yn dy helpu: ${sentence(helps)}`,
      tissue: () => 'Chwytha dy drwyn i hances.',
      throat: () => 'Agor dy geg. Mae’r blaen meddal yn cyffwrdd â’r cefn. Cyfra i ddeg.',
      nose: () => 'Wedyn mae’r blaen meddal yn mynd i dy drwyn. Efallai bydd yn goglais.',
      both: () => 'Mae’r blaen meddal yn mynd i dy drwyn. Un ochr, yna’r llall.',
      self: () => 'Cei di ddal y ffon. Rydyn ni’n dy helpu.',
      stop: () => 'Cei di ddweud stop. Rydyn ni’n stopio ar unwaith.',
      tube: () => 'Mae’r blaen yn mynd i diwb.',
      done: () => 'Dyna ni. Da iawn.',
      reward: ({ reward }) => `Wedyn: ${sentence(reward)}`,
      wait: ({ days }) => `Nawr rydyn ni’n aros. Gall gymryd ${diwrnodau(days)}.`,
      result: () => 'Byddwn ni’n dweud beth ddywedodd y prawf.',
      room: () => 'Os wyt ti’n sâl, byddi di’n aros yn dy ystafell. Byddwn ni’n dod atat ti.',
      fault: () => 'Nid dy fai di yw hyn.',
      ask: () => 'Gofynna i mi unrhyw bryd.',
    },
    results: {
      positive: [
        'Mae’r prawf wedi dod o hyd i’r germ.',
        'Nid dy fai di yw hyn.',
        'Byddi di’n aros yn dy ystafell am rai dyddiau. Byddwn ni’n dod atat ti.',
        'Dywed wrthym os wyt ti’n teimlo’n waeth.',
      ],
      negative: ['Ni ddaeth y prawf o hyd i’r germ.', 'Os wyt ti’n teimlo’n sâl, dywed wrthym.'],
      void: [
        'Ni weithiodd y prawf.',
        'Nid dy fai di yw hyn.',
        'Byddwn ni’n gofyn a wyt ti am roi cynnig arall.',
      ],
      inconclusive: [
        'Dydy’r prawf ddim yn siwr.',
        'Byddwn ni’n gofyn a wyt ti am roi cynnig arall.',
      ],
      withdrawn: [
        'Doedd yr hyn a ddywedon ni ddim yn iawn.',
        'Mae’n ddrwg gennym ni.',
        'Rydyn ni’n aros am y canlyniad cywir.',
      ],
    },
    title: (name) => `Fy mhrawf, ${name}`,
    story: (name) => `Stori am fy mhrawf. Fy enw i yw ${name}.`,
    resultTitle: (name) => `I ${name}: dy brawf`,
    now: 'Nawr',
    next: 'Nesaf',
    last: 'Dyna’r cyfan',
    onward: 'Llun nesaf',
    before: 'Yn ôl',
    stop: 'Stop',
    stopped: 'Rydyn ni’n stopio. Mae’n iawn stopio.',
    readAloud: 'Darllen i mi',
    quiet: 'Stopio darllen',
    needsReader: 'Needs a native reader before it is used.',
    when: (day) => `Roedd y prawf ar ${day}.`,
    questions: 'Gofynna i mi unrhyw bryd.',
  };
}

/** Days, counted; the word softens after two, and stands in the plural after higher numbers. */
function diwrnodau(count: number): string {
  const few = ['diwrnod', 'dau ddiwrnod', 'tri diwrnod', 'pedwar diwrnod'];
  return few[count - 1] ?? `${count} o ddiwrnodau`;
}
