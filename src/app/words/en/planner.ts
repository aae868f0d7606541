import type { AskedWish } from '../../../care/rounds/planning/ask-repairs.ts';
import type { BrokenRule } from '../../../care/rounds/planning/check-plan.ts';
import type { PlanRule } from '../../../care/rounds/planning/conflicts.ts';
import type { Repair } from '../../../care/rounds/planning/repairs.ts';
import type { Because } from '../../../care/rounds/planning/why-here.ts';
import type { LanguageTools } from '../language-tools.ts';

export function plannerWords({ plural, list, number }: LanguageTools) {
  const minutes = (count: number) =>
    plural(count, { one: '1 minute', other: `${number(count)} minutes` });
  const days = (share: number) => `${Math.round(share * 100)} of 100 days`;

  /** What a plan breaks. `who` is a person or a colleague, by the rule; `more` whom they asked for or against. */
  const broken: Record<BrokenRule, (who: string, late: number, more: string) => string> = {
    'unknown-person': (who) => `${who} is not on the list.`,
    'unknown-staff': (who) => `Nobody is there for ${who}.`,
    'visited-twice': (who) => `${who} stands there twice.`,
    'done-already': (who) => `${who} is done.`,
    'wrong-length': (who) => `The time for ${who} is too short.`,
    'too-early': (who, late) => `${who} is ${minutes(late)} too early.`,
    'outside-window': (who, late) => `${who} is ${minutes(late)} outside their own time.`,
    'too-soon-after-meal': (who) => `${who} has eaten too short a time before.`,
    'not-prepared': (who, late) => `${who} needs ${minutes(late)} more to get ready.`,
    alone: (who) => `${who} would be alone. It takes two.`,
    'may-not-swab': (who) => `${who} may not swab.`,
    'may-not-record': (who) => `${who} may not record.`,
    'kept-apart': (who) => `${who} does not work with this colleague.`,
    'excluded-staff': (who, _, staff) => `${who} does not want ${staff}.`,
    'other-gender': (who, _, wish) => `${who} asked for ${wish} to swab.`,
    'not-on-shift': (who) => `${who} is not on shift then.`,
    'on-break': (who) => `${who} has a break then.`,
    'in-two-places': (who) => `${who} would be in two places.`,
    'change-too-short': (who) => `There is no time to change PPE before ${who}.`,
    'cohort-order': (who) => `${who} comes after somebody with more risk.`,
    'units-mixed': (who) => `${who} lives in a unit that is kept apart.`,
    'too-many-pairs': () => 'More pairs would be at work than there may be.',
    'pair-changed': (who) => `${who} would work in two pairs.`,
    'no-kit': () => 'There are not enough kits.',
    'no-gloves': () => 'There are not enough gloves.',
    'no-aprons': () => 'There are not enough aprons.',
    'no-masks': () => 'There are not enough masks.',
    'after-courier': (who, late) => `${who} is ${minutes(late)} too late for the courier.`,
    'tube-too-old': (who) => `The tube of ${who} waits too long for the courier.`,
    'registered-too-late': () => 'Not all can be registered before the day ends.',
  };

  /** A rule that conflicts with others. `who` and `more` are names or times, by the rule. */
  const rules: Record<PlanRule['rule'], (who: string, more: string) => string> = {
    courier: (at) => `The courier comes at ${at}.`,
    pairs: (count) => `Only ${count} pair may work at one time.`,
    'cohort-order': () => 'Those with least risk come first.',
    'units-apart': () => 'Units are kept apart.',
    storage: () => 'A tube may wait only so long.',
    register: () => 'All are registered the same day.',
    supplies: () => 'There are only so many kits and aprons.',
    shift: (who, at) => `${who} is here from ${at}.`,
    away: (who) => `${who} has a break.`,
    swabber: (who) => `${who} may not swab.`,
    recorder: (who) => `${who} may not record.`,
    apart: (who, other) => `${who} and ${other} do not work together.`,
    windows: (who, at) => `${who} has time only from ${at}.`,
    meals: (who) => `${who} has just eaten.`,
    preparation: (who) => `${who} has to be made ready first.`,
    excluded: (who, staff) => `${who} does not want ${staff}.`,
    gender: (who, wish) => `${who} asked for ${wish} to swab.`,
    'not-before': (who, at) => `${who} may be asked only from ${at}.`,
  };

  const repairs: Record<
    Exclude<Repair['repair'], 'ask'>,
    (who: string, count: number) => string
  > = {
    'courier-later': (_, count) => `Ask the courier to come ${minutes(count)} later.`,
    'begin-earlier': (_, count) => `Begin ${minutes(count)} sooner.`,
    'stay-longer': (who, count) => `Ask ${who} to stay ${minutes(count)} longer.`,
    'no-break': (who) => `Move the break of ${who}.`,
    'borrow-swabber': () => 'Borrow somebody who may swab.',
    'borrow-recorder': () => 'Borrow somebody to record.',
    'borrow-pair': () => 'Borrow a second pair.',
    'change-pairs': () => 'Let a colleague take over on the way.',
    'more-supplies': (_, count) => `Get kits and PPE for ${number(count)} more.`,
    leave: (who) => `Leave ${who} to another day.`,
  };

  /** Somebody may give up their own wish, for the day, when they are asked. */
  const ask: Record<AskedWish['may'], (who: string, staff: string) => string> = {
    come: (who, staff) => `Ask ${who} if ${staff} may come.`,
    swab: (who, staff) => `Ask ${who} if ${staff} may swab.`,
  };

  const because: Record<Because['because'], (what: string, who: string) => string> = {
    first: () => 'The pair begins here.',
    after: (who) => `Comes straight after ${who}.`,
    window: (at) => `Has time from ${at}.`,
    meal: () => 'Needs time after a meal.',
    preparation: () => 'Has to be made ready first.',
    'not-before': (at) => `Not before ${at}.`,
    staff: (who) => `${who} is there from then.`,
    courier: () => 'No sooner time fits.',
    cohort: () => 'Those with more risk come last.',
    closes: (at) => `Their time ends at ${at}.`,
    wish: (staff, who) => `${who} asked for ${staff}.`,
    'unmet-wish': (staff, who) => `${who} asked for ${staff}. That did not fit.`,
    unwanted: (staff, who) => `${who} does not want ${staff}.`,
    'swabber-wish': (wish, who) => `${who} asked for ${wish} to swab.`,
    units: () => 'Units are kept apart.',
  };

  return {
    ...{ broken, rules, repairs, ask, because },
    title: 'Work out the order',
    lead: 'Say who is on shift. The tablet looks for the best order and times.',
    begins: 'When can you begin?',
    pairs: 'How many pairs at one time?',
    pairCount: (count: number) => plural(count, { one: '1 pair', other: `${count} pairs` }),
    askChange: 'May a pair change on the way?',
    mayChange: 'Yes, a colleague may take over',
    team: 'Who is on shift?',
    from: (who: string) => `${who}: from`,
    until: (who: string) => `${who}: until`,
    may: {
      both: 'May swab and record',
      swab: 'May swab, not record',
      record: 'May record, not swab',
    },
    duties: 'Breaks and other duties',
    dutiesOf: (who: string) => `When is ${who} not free?`,
    meals: 'Mealtimes',
    mealsToday: 'When do people eat today?',
    mealGap: (count: number) => `No throat swab for ${minutes(count)} after a meal.`,
    meal: 'Meal',
    couriers: 'More courier times',
    courierToo: (n: number) => `Courier ${n} comes at`,
    addCourier: 'Add a courier time',
    apart: 'Who is not to be a pair?',
    apartToday: 'These two are not a pair today',
    nobodyApart: 'Nobody on shift. It is set on the page of a colleague.',
    times: 'Who can only be seen at some times?',
    timesLead: 'Leave it empty to keep to what is usual.',
    personFrom: (who: string) => `${who}: not before`,
    personUntil: (who: string) => `${who}: done by`,
    go: 'Find the best order',
    again: 'Find the best order anew',
    stop: 'Stop and use the best so far',
    working: (share: number) => `Looking for the best order: ${Math.round(share * 100)} % done.`,
    broke: 'That did not work. Try again, or set the order by hand.',
    cannot: 'The order cannot be worked out yet.',
    needsTwo: 'Pick at least two colleagues: one swabs, one records.',

    planned: 'The plan',
    packed: (at: string) => `All packed by ${at}.`,
    early: (count: number) => `That is ${minutes(count)} before the courier.`,
    late: (count: number) => `That is ${minutes(count)} too late for the courier.`,
    chance: (share: number) => `In time on ${days(share)}.`,
    everyone: (share: number) => `Everybody is seen in their own time on ${days(share)}.`,
    error: (share: number) => `This may be off by ${Math.max(1, Math.round(share * 100))} in 100.`,
    proven: 'No order is better.',
    gap: (share: number) => `No order is better by more than ${Math.ceil(share * 100)} %.`,
    leftOut: (names: readonly string[]) =>
      `No time for ${list(names)}. They stay at the end of the list.`,
    keepsAll: 'No rule is broken.',
    breaks: (count: number) =>
      plural(count, { one: 'This breaks a rule.', other: `This breaks ${number(count)} rules.` }),
    pairOf: (a: string, b: string) => `${a} and ${b}`,
    picture: 'The round against the time of the courier',
    courierAt: (at: readonly string[]) => `Courier ${list(at)}`,
    why: 'Why here?',
    whyOf: (who: string) => `Why here? ${who}`,
    up: (who: string) => `Move ${who} up`,
    down: (who: string) => `Move ${who} down`,
    other: (who: string) => `Move ${who} to the next pair`,
    drag: (who: string) => `Drag ${who} to another place`,
    readyAt: (at: string) => `Make ready at ${at}.`,
    swabs: (who: string) => `${who} swabs.`,
    back: 'Back to the plan that was found',
    take: 'Use this plan',
    taken: 'This plan is used. Go on with Next.',
    conflict: 'To see everybody, one of these has to change',
    notProven: 'No plan was found that keeps them all.',
    repair: 'Any one of these would do',
    repaired: (at: string, share: number) => `Then it ends at ${at}, in time on ${days(share)}.`,
    asking: 'Looking for what could be changed.',
    stopAsking: 'Stop looking',
    restLead: 'What is done stays. The rest moves as little as may be.',
    moved: (count: number) =>
      plural(count, {
        one: '1 person gets another pair.',
        other: `${number(count)} people get another pair.`,
      }),
    later: (count: number) =>
      plural(count, {
        one: '1 person comes later than they were told.',
        other: `${number(count)} people come later than they were told.`,
      }),
    list,
    at: (at: string, a: string, b: string) => `${at}: ${a} and ${b}`,
  };
}
