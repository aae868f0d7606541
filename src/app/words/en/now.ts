import type { FindingKind } from '../../../care/quality/finding.ts';
import type { ActionKind } from '../../../care/results/facts.ts';
import type { TrayReason } from '../../../care/results/tray.ts';
import type { LanguageTools } from '../language-tools.ts';

export function nowWords({ dates, plural, list }: LanguageTools) {
  const actions: Record<ActionKind, string> = {
    'tell-person': 'Tell them',
    'tell-representative': 'Tell family or representative',
    'tell-doctor': 'Tell the doctor',
    'tell-health-protection': 'Tell the health protection team',
    isolate: 'Start isolation, as the plan says',
    'find-contacts': 'Find who was near',
    'test-home': 'Ask about testing the whole home',
    'test-again': 'Test again',
    'ask-laboratory': 'Ask the laboratory',
  };
  const findings: Record<FindingKind, string> = {
    'code-on-two': 'One barcode is on two tests',
    'code-elsewhere': 'Another home has used this code too',
    'labels-differ': 'Labels of one test differ',
    'two-tests': 'Two tubes for one person',
    'swabbed-after-no': 'A swab beside a no',
    'packed-twice': 'One tube is in two boxes',
    'packed-though-spoiled': 'A closed tube is in a box',
    'registered-twice': 'One test has two references',
    'reference-on-two': 'One reference is on two tests',
    'two-results': 'Two results that differ',
    'result-without-test': 'A result for a code not used here',
    'result-unmatched': 'A result that nothing else matches',
    'result-for-closed': 'A result for a kit that was closed',
    'result-before-swab': 'A result from before the swab',
    'result-does-not-fit': 'A result does not fit what is known',
    'result-of-another': 'A result that came for somebody else',
    'result-for-withdrawn': 'A result for a test that was taken out',
    'report-on-two': 'A report that was settled in two ways',
    'box-changed': 'A shut box has other bags now',
    'handed-twice': 'Two counts for one box',
    'round-changed': 'A closed round has changed',
    'edited-twice': 'Two people changed one thing',
    'without-right': 'Decided by somebody who may not',
    'two-open': 'One colleague in two turns',
    'against-wish': 'A colleague they do not want',
    unreadable: 'A record this tablet cannot read',
  };
  const trayReasons: Record<TrayReason, string> = {
    'code-missing': 'It has no code.',
    'code-unknown': 'No test here has its code.',
    'code-on-two': 'Its code was used for two tests.',
    'code-closed': 'The kit with its code was closed for ever.',
    'test-withdrawn': 'A senior took this test out.',
    'no-identity': 'It has only a code. A birth date or a name must fit too.',
    'born-differs': "The birth date is not the person's.",
    'name-differs': "The name is not the person's.",
    'name-not-enough': 'Somebody here has a name like it. It needs a birth date too.',
    'reference-differs': 'The reference is not ours for this test.',
    'second-result': 'There is a result for this test already.',
    'before-swab': 'It is older than the swab.',
    'never-packed': 'The tube was never packed here.',
    'nothing-to-correct': 'It takes back a result that we do not have.',
    'words-unknown': 'We do not know what its words mean.',
    'test-unknown': 'We do not know what it was tested for.',
    'day-missing': 'It has no day, or one that we cannot read.',
    preliminary: 'It is not final. The laboratory will send another.',
  };
  return {
    title: 'Now',
    about: (what: string, whose: string) => `${what}: ${whose}`,
    actions,
    findings,
    findingStates: {
      open: 'open',
      reopened: 'open again',
      'settled-differently': 'settled differently',
      settled: 'settled',
    },
    trayReasons,
    tray: 'Reports that fit nobody yet',
    trayWaits: (count: number) =>
      plural(count, {
        one: '1 report fits nobody yet',
        other: `${count} reports fit nobody yet`,
      }),
    practise: (name: string, step: string) => `Practice with ${name}: ${step}`,
    practiseHow: (number: number, of: number, minutes: number) =>
      `Step ${number} of ${of}, ${minutes} minutes.`,
    session: 'Write down a session',
    chainBroken: 'The records of a tablet do not join up.',
    chainLook: 'Look at it',
    groups: {
      act: 'Results to act on',
      settle: 'Does not fit: a senior decides',
      turn: 'Turns still open',
      tubes: 'Tubes still here',
      register: 'Not registered yet',
      chase: 'Results late',
      round: "Today's rounds",
      held: "Can't go ahead yet",
      due: 'Due today',
      calm: 'Tell people their result',
      practice: 'Practice today',
      supplies: 'Kits',
      policy: 'Policy',
    },
    nothing: 'Nothing needs you now.',
    fine: (parts: readonly string[]) => `Fine: ${list(parts)}.`,
    here: (count: number) =>
      plural(count, { one: '1 person lives here', other: `${count} people live here` }),
    stock: (count: number) =>
      plural(count, { one: '1 kit in date', other: `${count} kits in date` }),
    waiting: (count: number) =>
      plural(count, {
        one: '1 result still in its time',
        other: `${count} results still in their time`,
      }),
    hoursLeft: (hours: number) => (hours < 0 ? 'Too late' : `${hours} h left`),
    by: (at: string) => `By ${dates.time(at)}`,
    byDay: (day: string) => `By ${dates.dayMonth(day)}`,
    since: (day: string) => `Since ${dates.dayMonth(day)}`,
    today: 'Today',
    late: 'Late',
    actOn: (name: string, outcome: string, action: string) => `${name}, ${outcome}. ${action}.`,
    again: 'The result was changed. This was done before. Look again.',
    nameIt: 'Who and when',
    open: 'Open',
    settle: 'Read it',
    turnOpen: (name: string) => `${name}'s turn is open.`,
    goOn: 'Carry on',
    notCollected: (count: number, missed: boolean) =>
      plural(count, {
        one: missed ? '1 tube is here. The courier has not come.' : '1 tube waits for the courier.',
        other: missed
          ? `${count} tubes are here. The courier has not come.`
          : `${count} tubes wait for the courier.`,
      }),
    book: 'See the box',
    registerWhat: (name: string) => `${name}'s test is not registered.`,
    registerMany: (count: number) =>
      plural(count, {
        one: '1 test is not registered.',
        other: `${count} tests are not registered.`,
      }),
    couldNot: 'could not register',
    nextTry: (at: string) => `next try ${dates.dayTime(at)}`,
    register: 'Register',
    sameDay: 'register the same day',
    chaseWhat: (name: string, hours: number) =>
      `${name}'s result is ${hours} hours old. Ring the laboratory.`,
    ring: 'How to ring',
    resultRule: (hours: number) => `result by ${hours} h`,
    storageRule: (hours: number) => `kit keeps ${hours} h`,
    roundWhat: (done: number, of: number) =>
      done === 0 ? `Ready: ${of} on the list.` : `${done} of ${of} done.`,
    held: 'See what is missing',
    dueWhat: (count: number) =>
      plural(count, { one: '1 person is due.', other: `${count} people are due.` }),
    due: (names: readonly string[]) =>
      plural(names.length, { one: `${list(names)} is due.`, other: `${list(names)} are due.` }),
    prepare: 'Prepare a round',
    person: 'See the person',
    kitsEnd: (count: number, lot: string, on: string) =>
      plural(count, {
        one: `1 kit of lot ${lot} ends on ${dates.date(on)}.`,
        other: `${count} kits of lot ${lot} end on ${dates.date(on)}.`,
      }),
    kitsEnded: (count: number, lot: string) =>
      `${count} kits of lot ${lot} have ended. Put them aside.`,
    kits: 'See the kits',
    usedFirst: 'the next round takes these first',
    confirm: 'No policy has been confirmed. A manager must confirm one.',
    policy: 'See the policy',
  };
}
