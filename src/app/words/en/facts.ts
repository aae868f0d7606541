import type { PersonField } from '../../../care/people/facts.ts';
import type { StaffField } from '../../../care/staff/facts.ts';
import type { PlanField } from '../../../care/support/facts.ts';
import type { LanguageTools } from '../language-tools.ts';

/** What happened, each kind of fact in a sentence or two: for histories, findings and the inspector. */
export function factWords({ dates, list, plural }: LanguageTools) {
  const day = dates.date;
  const personFields: Record<PersonField, string> = {
    name: 'Name',
    called: 'Likes to be called',
    born: 'Birth date',
    room: 'Room',
    identifier: 'Number',
    photo: 'Photo',
    note: 'Note',
  };
  const staffFields: Record<StaffField, string> = {
    name: 'Name',
    called: 'Likes to be called',
    photo: 'Photo',
    phone: 'Phone',
  };
  const planFields: Record<PlanField, string> = {
    helps: 'What helps',
    'stop-signs': 'Signs of stop',
    'yes-signs': 'Signs of yes',
    'no-signs': 'Signs of no',
    'unsure-signs': 'Signs of not sure',
    'calm-signs': 'Signs of calm',
    'distress-signs': 'Signs of distress',
    staff: 'With whom',
    time: 'When',
    position: 'How they sit',
    sensory: 'Light, noise, touch',
    'sites-tolerated': 'What they can bear',
    'own-scale': 'Their own scale',
    triggers: 'What upsets',
    communication: 'How to talk',
    place: 'Where',
    reward: 'Reward',
    never: 'Never',
  };
  return {
    personFields,
    staffFields,
    planFields,
    erased: 'erased',
    new: 'new',
    service: 'the service',
    thisTablet: 'this tablet',
    tablet: (id: string) => `tablet ${id}`,
    signed: (who: string, others: readonly string[]) =>
      others.length === 0 ? who : `${who}, with ${list(others)}`,
    byTheProgram: 'Written by the program itself',
    how: { scanned: 'scanned', 'typed-twice': 'typed twice', file: 'read from a file' },
    replaced: 'Put right later.',
    amends: 'Puts right what stood before.',
    quick: 'Tapped fast: may not have been watched.',

    policyWritten: (policy: string, version: number) =>
      `The rules "${policy}", version ${version}, were written down.`,
    policyConfirmed: (policy: string, version: number, from: string) =>
      `Policy ${policy}, version ${version}. It holds from ${day(from)}.`,
    field: (field: string, value: string) => `${field}: ${value}.`,
    roleGiven: (staff: string, role: string) => `${staff} is a ${role}.`,
    trained: (staff: string, skill: string, until: string) =>
      `${staff} is trained to ${skill} until ${day(until)}.`,
    skills: { swab: 'swab', record: 'record' },
    knows: (staff: string, person: string, does: boolean) =>
      does ? `${staff} knows ${person} by sight.` : `${staff} does not know ${person} by sight.`,
    staffReturned: (staff: string, on: string) => `${staff} is back since ${day(on)}.`,
    struckOut: (why: string) => `An entry was struck out: ${why}`,
    staffLeft: (staff: string, on: string) => `${staff} left on ${day(on)}.`,
    placed: (person: string, unit: string) => `${person} lives in ${unit}.`,
    unit: (name: string) => `Unit: ${name}.`,
    came: (person: string, on: string, from: 'admission' | 'hospital' | 'leave') =>
      ({
        admission: `${person} moved in on ${day(on)}.`,
        hospital: `${person} came back from hospital on ${day(on)}.`,
        leave: `${person} came back on ${day(on)}.`,
      })[from],
    went: (person: string, on: string, where: 'hospital' | 'leave' | 'moved' | 'died') =>
      ({
        hospital: `${person} went to hospital on ${day(on)}.`,
        leave: `${person} went away on ${day(on)}.`,
        moved: `${person} moved on ${day(on)}.`,
        died: `${person} died on ${day(on)}.`,
      })[where],
    authority: {
      'asks-each-time': 'decides alone and is asked each time',
      'best-interests': 'a best-interests decision stands',
      attorney: 'an attorney decided',
      deputy: 'a deputy decided',
      refuses: 'has said no',
      supported: 'decides with help and is asked each time',
      interpretation: 'their will was read as well as can be',
      nobody: 'nobody may decide yet',
    },
    decisionLooked: 'The record of a decision was opened.',
    practiceAsked: (wanted: boolean) =>
      wanted ? 'The plan asks for practice.' : 'The plan asks for no more practice.',
    practiceSession: (step: string, end: string) => `Practice, "${step}": ${end}.`,
    practiceEnds: { done: 'done', 'not-yet': 'not yet', distressed: 'it upset them' },
    after: (mood: string) => `How it went: ${mood}.`,
    afterAnswered: (count: number) =>
      count === 0 ? 'The plan stays as it is.' : 'The plan was put right from how it went.',
    sharing: (reader: string, agreed: boolean) =>
      agreed ? `Results may be told to the ${reader}.` : `Results are not told to the ${reader}.`,
    readers: { person: 'person', family: 'family', doctor: 'doctor' },
    letter: (reader: string) => `A letter was made for the ${reader}.`,
    consent: (person: string, on: string, from: string, until: string) =>
      `${person}: ${on}. From ${dates.shortDate(from)} until ${dates.shortDate(until)}.`,
    planReviewed: (next: string) => `Support plan: look again by ${day(next)}.`,
    ways: (face: boolean, nose: boolean, self: boolean) =>
      [
        face ? 'Known by face.' : 'Known by birthday.',
        nose ? 'Nose only.' : 'Throat and nose.',
        ...(self ? ['Swabs alone.'] : []),
      ].join(' '),
    cautionRaised: (caution: string) => `Caution: ${caution}.`,
    cautionAnswers: {
      'go-ahead': 'A clinician said: go ahead.',
      'nose-only': 'A clinician said: nose only.',
      'do-not-swab': 'A clinician said: do not swab.',
      'no-longer-applies': 'A clinician said: no longer so.',
    },
    preparations: {
      medicine: 'medicine',
      numbing: 'numbing cream or spray',
      'visit-first': 'a visit first',
      other: 'something else',
    },
    preparationAgreed: (what: string, minutes: number) =>
      `Agreed with the doctor: ${what}, ${minutes} minutes ahead.`,
    preparationDone: 'What was agreed with the doctor was done.',
    symptoms: (on: string) => `Symptoms seen on ${day(on)}.`,
    contact: (on: string, source: string | undefined) =>
      source === undefined ? `Was near a case on ${day(on)}.` : `Was near ${source} on ${day(on)}.`,
    homeTested: (on: string) => `The whole home is tested, from ${day(on)}.`,
    homeCalledOff: (why: string) => `Testing the whole home was called off: ${why}`,

    kitsCame: (count: number, lot: string) => `${count} kits of lot ${lot} came in.`,
    kitsUnpacked: (count: number) =>
      plural(count, { one: '1 kit was unpacked.', other: `${count} kits were unpacked.` }),
    kitsCounted: (count: number, lot: string) => `Lot ${lot}: ${count} counted on the shelf.`,
    lotRecalled: (lot: string) => `Lot ${lot} was recalled.`,
    kitAside: 'A kit was put aside.',
    codeElsewhere: (code: string, home: string | undefined) =>
      `${home ?? 'Another home of the group'} has used the code ${code} too.`,
    ppeCounted: (count: number) => `PPE counted: ${count}.`,

    roundPlanned: (on: string, courier: string) =>
      `Round planned for ${day(on)}. Courier ${dates.time(courier)}.`,
    roundListed: (people: readonly string[]) => `On the list: ${list(people)}.`,
    boxStarted: 'A box was begun.',
    boxClosed: (count: number, wiped: boolean) =>
      `Box shut with ${plural(count, { one: '1 tube', other: `${count} tubes` })}${wiped ? ', wiped' : ''}.`,
    boxHanded: (courier: string, count: number, seal: string) =>
      `Handed to ${courier}: ${count} counted, seal ${seal}.`,
    courierMissed: (due: string) => `The courier due ${dates.dayTime(due)} did not come.`,
    courierRebooked: (due: string, who: string) =>
      `Courier booked for ${dates.dayTime(due)}. ${who} has it in hand.`,
    roundClosed: (packed: number, spoiled: number) =>
      `Round closed: ${packed} packed, ${spoiled} spoiled.`,

    turnOpened: (person: string, swabber: string, recorder: string) =>
      `Turn with ${person}. ${swabber} swabs, ${recorder} records.`,
    identity: (way: 'birthday' | 'face', right: boolean, none: boolean) => {
      const shown = way === 'birthday' ? 'birthday' : 'face';
      if (right) return `The ${shown} was picked blind, and it was theirs.`;
      return none
        ? `The ${shown} was not among those shown. Stopped.`
        : `Another ${shown} was picked. Stopped.`;
    },
    identityOnPaper: {
      birthday: 'The paper says that they gave their birthday.',
      face: 'The paper says that they were known by face.',
    },
    identityLapsed: 'Too long since then. Asked again who this is.',
    willing: {
      yes: 'Asked if now is all right. Answer: yes.',
      no: 'Asked if now is all right. Answer: no.',
      unsure: 'Asked if now is all right. Not sure.',
      asleep: 'Asleep. Not woken.',
      away: 'Not there.',
    },
    stopped: 'Stop.',
    stopMistaken: 'Stop was pressed by mistake.',
    stopWhy: (why: string) => `Why it was stopped: ${why}.`,
    interrupted: 'The pair had to leave.',
    resumed: (swabber: string, recorder: string) =>
      `Taken up again. ${swabber} swabs, ${recorder} records.`,
    tube: {
      'none-open': 'No kit was open.',
      'lid-was-on': 'The lid was on.',
      'kept-safe': 'The kit was kept safe.',
      'left-open': 'The kit was left open.',
    },
    ends: {
      taken: 'Turn ended: swab taken.',
      declined: 'Turn ended: said no.',
      'not-now': 'Turn ended: not now.',
      stopped: 'Turn ended: stopped.',
      'not-them': 'Turn ended: somebody else answered.',
      'kit-fault': 'Turn ended: the kit failed.',
      interrupted: 'Turn ended: broken off.',
    },
    kitOpened: (code: string) => `Kit opened, spare label ${code}.`,
    kitLot: (lot: string, expires: string) => `Lot ${lot}, good until ${dates.shortDate(expires)}.`,
    kitChecked: 'Parts of the kit looked at: all there.',
    labelRead: (place: 'tube' | 'bag', code: string) =>
      place === 'tube' ? `Label on the tube read: ${code}.` : `Label on the bag read: ${code}.`,
    way: (nose: boolean, self: boolean) =>
      [nose ? 'Nose only.' : 'Throat and nose.', self ? 'They do it alone.' : ''].join(' ').trim(),
    sites: {
      throat: 'throat',
      'nostril-1': 'first side of the nose',
      'nostril-2': 'other side of the nose',
    },
    siteStarted: (site: string) => `Began: ${site}.`,
    siteEnded: (site: string, seconds: number) => `Dial: ${site}, ${seconds} s.`,
    taken: (sites: readonly string[], self: boolean) =>
      `${self ? 'They swabbed alone' : 'Swab taken'}: ${list(sites)}.`,
    siteFor: (site: string, seconds: number) => `${site} ${seconds} s`,
    short: 'One side was left out.',
    tubeClosed: 'Lid seen tight and dry.',
    tubeSealed: 'Tube sealed in its bag.',
    spoiled: (why: string) => `Kit closed for ever: ${why}.`,
    packed: (code: string) => `Bag read into the box: ${code}.`,
    touched: 'Used gloves touched the tablet.',
    wiped: 'The tablet was wiped.',

    registered: (reference: string) => `Registered. Reference ${reference}.`,
    failures: {
      'site-down': 'Could not register: their site was down.',
      'no-connection': 'Could not register: no internet here.',
      refused: 'Could not register: they refused it.',
      'missing-details': 'Could not register: a detail was missing.',
      other: 'Could not register.',
    },
    nextTry: (at: string, who: string) => `${who} tries again ${dates.dayTime(at)}.`,
    uploadSet: (columns: number) =>
      `The upload file was set: ${plural(columns, { one: '1 column', other: `${columns} columns` })}.`,
    result: (outcome: string, reported: string) =>
      `Result: ${outcome}, dated ${dates.shortDate(reported)}.`,
    matched: {
      born: 'Birth date on it matched.',
      name: 'Name on it matched.',
      reference: 'Reference on it matched.',
      settled: 'A senior decided that it belongs here.',
      none: 'Nothing else on it matched.',
    },
    reportCame: (source: string, outcome: string) => `A report came, ${source}: ${outcome}.`,
    reportUnclear: 'it is not clear what it says',
    reportSettled: {
      belongs: 'A senior put a report on this record.',
      'set-aside': 'A senior set a report aside.',
    },
    reportMapping: (columns: number) =>
      `How a list of results is read was kept: ${plural(columns, { one: '1 column', other: `${columns} columns` })}.`,
    chased: (whom: string, said: string) => `Rang ${whom}. They said: ${said}`,
    ringAgain: (at: string) => `Ring again ${dates.dayTime(at)}.`,
    actionNamed: (action: string, who: string, due: string) =>
      `${action}: ${who}, by ${dates.dayTime(due)}.`,
    actionDone: (action: string, needed: boolean) =>
      needed ? `${action}: done.` : `${action}: not needed.`,
    verdicts: {
      'one-stands': 'Settled: one of them stands.',
      'none-stands': 'Settled: none of it stands.',
      explained: 'Settled: it was explained.',
    },
  };
}
