import type { Cohort } from '../../../care/outbreaks/cohort.ts';
import type { LeftOff } from '../../../care/rounds/round.ts';
import type { PpeItem } from '../../../care/supplies/facts.ts';
import type { LanguageTools } from '../language-tools.ts';

export function prepareWords({ dates, plural, list }: LanguageTools) {
  const day = dates.date;
  const short = dates.dayMonth;
  const cohorts: Record<Cohort, string> = {
    'no-known-exposure': 'no known contact',
    exposed: 'was near a case',
    symptomatic: 'has symptoms',
    positive: 'positive',
  };
  const reasons: Record<LeftOff['why'], string> = {
    away: 'Away that day',
    unwell: 'Too unwell',
    'asked-not-to': 'Asked us not to',
    'another-day': 'Another day suits better',
    'not-ready': 'Something is missing',
    other: 'Another reason',
  };
  const ppe: Record<PpeItem, string> = {
    gloves: 'Gloves, pairs',
    aprons: 'Aprons',
    masks: 'Masks',
    'eye-protection': 'Eye protection',
  };
  return {
    cohorts,
    reasons,
    ppe,
    title: 'Prepare a round',
    change: 'Change the round',
    steps: { when: 'When', who: 'Who', order: 'Order', check: 'Check' },
    titles: {
      when: 'When, and with whom?',
      who: 'Who is swabbed?',
      order: 'In which order?',
      check: 'Is all in place?',
    },
    next: 'Next',
    back: 'Back',
    keep: 'Keep this round',
    closed: 'This round is closed. It can no longer be changed.',

    day: 'Day of the round',
    test: 'Test',
    kit: 'Kind of kit',
    courier: 'When does the courier come?',
    pack: 'Minutes for packing',
    minutes: (count: number) => `${count} minutes`,
    packBy: (at: string) => `All bags on the pack table by ${dates.time(at)}.`,
    courierOver: 'That time is over today. Check it.',
    swabber: 'Who swabs?',
    recorder: 'Who records?',
    whoMayNot: (count: number) =>
      plural(count, {
        one: '1 colleague may not, and why',
        other: `${count} colleagues may not, and why`,
      }),
    fill: {
      courier: 'Say when the courier comes.',
      swabber: 'Pick who swabs.',
      recorder: 'Pick who records.',
    },

    groups: {
      due: 'Due',
      held: 'Due, but something is missing',
      begun: 'Swabbed or begun in this round',
      elsewhere: 'On another round that day',
      resting: 'Not now, by rule',
      other: 'Nobody asks for them',
    },
    otherHint: 'Put somebody on if they, or a doctor, asked for it.',
    heldHint: 'Put them on only if it will be put right first.',
    chosen: (count: number, of: number) =>
      `${plural(count, { one: '1 person', other: `${count} people` })} on the list. ${of} due.`,
    by: (rule: string, on: string) => `${rule}, by ${short(on)}`,
    noRule: 'no rule',
    whyOff: (name: string) => `Why is ${name} left off?`,
    sayWhy: (name: string) => `Say why ${name} is left off.`,
    see: {
      senior: 'See a senior.',
      doctor: 'See a senior, who asks the doctor or nurse.',
      records: 'Add it on their page.',
      wait: 'Wait until they are back.',
    },
    open: 'Open the record',
    openOf: (name: string) => `Open the record of ${name}`,
    resting: {
      away: (since: string) => `Away since ${day(since)}.`,
      'recent-positive': (until: string) => `Positive lately. Not again before ${short(until)}.`,
      'awaiting-result': (since: string) =>
        `Swabbed on ${day(since)}. The result is still to come.`,
    },

    orderLead:
      'Those least likely to carry it come first. Then one part of the home after another.',
    up: (name: string) => `Move ${name} up`,
    down: (name: string) => `Move ${name} down`,
    upShort: 'Up',
    downShort: 'Down',
    nowAt: (name: string, at: number, of: number) => `${name} is now ${at} of ${of}.`,
    sensible: 'Back to the sensible order',
    byHand: 'Somebody moved people by hand.',
    room: (room: string) => `room ${room}`,
    ahead: (minutes: number) => `needs ${minutes} minutes beforehand`,
    whyHere: 'Why here:',
    changeAll: 'New PPE from head to foot here.',
    goesBack: (name: string, after: string) =>
      `${name} comes after ${after}, who is more likely to carry it. Change all PPE, or move ${name} up.`,

    summary: (swabber: string, recorder: string) => `${swabber} swabs, ${recorder} records.`,
    people: 'People',
    ready: 'All in place.',
    askConsent: 'Ask at the time. They decide.',
    decisionUntil: (on: string) => `A decision stands until ${day(on)}.`,
    noPlan: 'No support plan yet. Write one first.',
    preparation: (what: string, minutes: number) =>
      `Agreed with the doctor: ${what}, ${minutes} minutes before.`,
    preparationDone: (what: string) => `Agreed with the doctor: ${what}. Done.`,
    kits: 'Kits',
    kitsTaken: (count: number, lot: string, ends: string) =>
      `${plural(count, { one: '1 kit', other: `${count} kits` })} of lot ${lot}, good until ${day(ends)}.`,
    kitsMissing: (count: number) =>
      plural(count, {
        one: '1 kit is missing. Get more before the round.',
        other: `${count} kits are missing. Get more before the round.`,
      }),
    kitsSpare: (count: number) =>
      count === 0
        ? 'None to spare if one fails.'
        : plural(count, { one: '1 more if one fails.', other: `${count} more if one fails.` }),
    soonest: 'Those that end soonest are taken first.',
    ppeTitle: 'PPE for this round',
    ppeCaption: 'What it takes, and what is left',
    ppeColumns: { item: 'Item', needed: 'Needed', left: 'Left', counted: 'Counted on' },
    ppeShort: (items: readonly string[]) => `Not enough: ${list(items)}.`,
    ppeFine: 'There is enough.',
    ppeUnknown: 'not counted',
    leftOff: 'Left off',
    leftOffLine: (name: string, why: string) => `${name}: ${why}.`,

    sheet: 'Print the run sheet',
  };
}
