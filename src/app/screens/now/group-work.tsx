import type { JSX } from 'preact';
import { turnOf } from '../../../care/custody/turn.ts';
import type { Work, WorkKind } from '../../../care/now/work.ts';
import { kitKindOf, policyOn, testKindOf } from '../../../care/policy/in-force.ts';
import { memberOf } from '../../../care/staff/member.ts';
import type { Instant } from '../../../care/time.ts';
import { dayOf, elapsed, HOUR } from '../../../care/time.ts';
import type { Desk } from '../../desk/desk.ts';
import { todayOf } from '../../desk/desk.ts';
import type { Names } from '../../desk/names.ts';
import { namesIn } from '../../desk/names.ts';
import { sayRefusal } from '../../desk/say-refusal.ts';
import { Button } from '../../pieces/form/button.tsx';
import type { WorkItem, WorkListProps } from '../../pieces/list/work-list.tsx';
import type { Words } from '../../words/en.ts';
import { paths, to } from '../paths.ts';

type Of<K extends WorkKind> = Extract<Work, { work: K }>;

interface Telling {
  readonly desk: Desk;
  readonly words: Words;
  readonly names: Names;
  readonly now: Instant;
}

/** The day's work in groups, in the order the core gave it; a group stands where its first item did. */
export function groupWork(desk: Desk, words: Words, work: readonly Work[]): WorkListProps[] {
  const names = namesIn(desk.home, words.refusals.somebody);
  const telling = { desk, words, names, now: desk.now() };
  const groups = new Map<string, WorkItem[]>();
  const due = work.filter((each) => each.work === 'due');
  for (const each of work) {
    const title = groupOf(each, words);
    if (each.work === 'due') groups.set(title, dueItems(due, telling));
    else groups.set(title, [...(groups.get(title) ?? []), itemOf(each, telling)]);
  }
  return [...groups].map(([title, items]) => ({ title, items }));
}

function groupOf(work: Work, { now }: Words): string {
  const { groups } = now;
  switch (work.work) {
    case 'act':
      return isCalm(work) ? groups.calm : groups.act;
    case 'settle':
    case 'tray':
      return groups.settle;
    case 'turn-open':
      return groups.turn;
    case 'not-collected':
      return groups.tubes;
    case 'register':
      return groups.register;
    case 'chase':
      return groups.chase;
    case 'round':
      return groups.round;
    case 'held':
      return groups.held;
    case 'due':
      return groups.due;
    case 'practice':
      return groups.practice;
    case 'kits-expire':
      return groups.supplies;
    case 'confirm-policy':
      return groups.policy;
  }
}

const isCalm = ({ late, action }: Of<'act'>): boolean =>
  !late && !['positive', 'withdrawn'].includes(action.outcome);

function itemOf(work: Exclude<Work, Of<'due'>>, telling: Telling): WorkItem {
  switch (work.work) {
    case 'act':
      return actItem(work, telling);
    case 'settle':
      return settleItem(work, telling);
    case 'tray':
      return trayItem(work, telling);
    case 'turn-open':
      return turnItem(work, telling);
    case 'not-collected':
      return tubesItem(work, telling);
    case 'register':
      return registerItem(work, telling);
    case 'chase':
      return chaseItem(work, telling);
    case 'round':
      return roundItem(work, telling);
    case 'held':
      return heldItem(work, telling);
    case 'practice':
      return practiceItem(work, telling);
    case 'kits-expire':
      return kitsItem(work, telling);
    case 'confirm-policy':
      return policyItem(telling);
  }
}

interface LinkTo {
  readonly path: string;
  readonly text: string;
  /** Whose, or which: said to a screen reader, where many links read alike. */
  readonly about: string;
  readonly main?: boolean;
}

const link = ({ now }: Words, { path, text, about, main = false }: LinkTo): JSX.Element => (
  <Button kind={main ? 'main' : 'plain'} href={to(path)} label={now.about(text, about)}>
    {text}
  </Button>
);

const hours = (from: Instant, until: Instant): number => Math.floor(elapsed(from, until) / HOUR);

/** The time by itself is today's; another day is named. */
const byWhen = (at: Instant, desk: Desk, { now: say }: Words): string => {
  const day = dayOf(at, desk.home.service.zone);
  return day === todayOf(desk) ? say.by(at) : say.byDay(day);
};

function actItem(
  { action, person, late, who }: Of<'act'>,
  { words, names, desk }: Telling,
): WorkItem {
  const say = words.now;
  const name = names.person(person);
  const { outcome } = action;
  const urgent = outcome === 'positive' || outcome === 'withdrawn';
  return {
    key: `act-${action.test}-${action.kind}`,
    state: late || urgent ? 'look' : 'todo',
    when: late ? say.late : byWhen(action.due, desk, words),
    ...(who !== undefined && { who: memberOf(desk.home, who).called }),
    what: (
      <>
        {say.actOn(name, words.outcomes[outcome], say.actions[action.kind])}
        {action.before !== undefined && <> {say.again}</>}
      </>
    ),
    why: [words.roles[action.rule.role]],
    action: link(words, {
      path: paths.act(action.test),
      text: who === undefined ? say.nameIt : say.open,
      about: name,
      main: late,
    }),
  };
}

function settleItem({ finding, standing }: Of<'settle'>, { words, names }: Telling): WorkItem {
  const say = words.now;
  const whose = finding.tests.map(names.test);
  return {
    key: finding.id,
    state: finding.tests.length > 0 ? 'look' : 'hand',
    when: say.today,
    what: [say.findings[finding.kind], ...new Set(whose)].join('. '),
    why: [say.findingStates[standing.state]],
    action: link(words, {
      path: paths.finding(finding.id),
      text: say.settle,
      about: say.findings[finding.kind],
    }),
  };
}

function trayItem({ waiting }: Of<'tray'>, { words }: Telling): WorkItem {
  const say = words.now;
  return {
    key: 'tray',
    state: 'look',
    when: words.now.today,
    what: say.trayWaits(waiting.length),
    why: [...new Set(waiting.flatMap(({ match }) => match.reasons))]
      .slice(0, 3)
      .map((reason) => say.trayReasons[reason]),
    action: link(words, { path: paths.tray, text: words.now.settle, about: say.tray }),
  };
}

function turnItem({ turn }: Of<'turn-open'>, { words, names }: Telling): WorkItem {
  const name = names.person(turn.person);
  return {
    key: `turn-${turn.id}`,
    state: 'hand',
    when: words.dates.time(turn.lastAt),
    who: names.staff(turn.pair.recorder),
    what: words.now.turnOpen(name),
    why: [],
    action: link(words, {
      path: paths.turn(turn.round, turn.person),
      text: words.now.goOn,
      about: name,
      main: true,
    }),
  };
}

function tubesItem(
  { round, missed, keepsUntil }: Of<'not-collected'>,
  { desk, words, now }: Telling,
): WorkItem {
  const say = words.now;
  const handed = new Set(round.boxes.filter((box) => box.handed.length > 0).map((box) => box.id));
  const { policy } = policyOn(desk.home, todayOf(desk));
  const kit = kitKindOf(policy, round.planned.data.kitKind);
  const count = round.turns
    .flatMap((id) => turnOf(desk.home, id)?.tests ?? [])
    .filter((id) =>
      desk.home.shelves
        .get('test')
        ?.get(id)
        ?.facts.some((fact) => fact.kind === 'bag.packed' && !handed.has(fact.data.box)),
    ).length;
  const who = round.rebooked && memberOf(desk.home, round.rebooked.data.who).called;
  return {
    key: `tubes-${round.id}`,
    state: missed ? 'look' : 'hand',
    when: say.hoursLeft(hours(now, keepsUntil)),
    ...(who !== undefined && { who }),
    what: say.notCollected(count, missed),
    why: [say.storageRule(kit?.storage.hours ?? 72)],
    action: link(words, {
      path: paths.handOver(round.id),
      text: say.book,
      about: words.rounds.of(round.planned.data.day),
      main: missed,
    }),
  };
}

function registerItem(
  { swab, registration, late }: Of<'register'>,
  { words, names }: Telling,
): WorkItem {
  const say = words.now;
  const name = names.person(swab.turn.person);
  const failed = registration.failures.at(-1);
  return {
    key: `register-${swab.test.id}`,
    state: late || failed !== undefined ? 'look' : 'todo',
    when: late ? say.since(swab.on) : say.today,
    ...(failed && { who: names.staff(failed.data.who) }),
    what: say.registerWhat(name),
    why: [say.sameDay, ...(failed ? [`${say.couldNot}, ${say.nextTry(failed.data.nextTry)}`] : [])],
    action: link(words, {
      path: paths.register(swab.turn.round),
      text: say.register,
      about: name,
      main: late,
    }),
  };
}

function chaseItem({ waiting }: Of<'chase'>, { desk, words, names, now }: Telling): WorkItem {
  const say = words.now;
  const { swab } = waiting;
  const name = names.person(swab.turn.person);
  const { policy } = policyOn(desk.home, todayOf(desk));
  const kind = testKindOf(policy, swab.round?.planned.data.test ?? '');
  const last = waiting.chased.at(-1);
  return {
    key: `chase-${swab.test.id}`,
    state: 'look',
    when: say.since(swab.on),
    ...(last && { who: names.staff(last.by) }),
    what: say.chaseWhat(name, hours(waiting.since, now)),
    why: [say.resultRule(kind?.resultHours.value ?? 72)],
    action: link(words, { path: paths.chase(swab.test.id), text: say.ring, about: name }),
  };
}

function roundItem({ round, tally }: Of<'round'>, { words, names }: Telling): WorkItem {
  const say = words.now;
  const { day, swabber, recorder } = round.planned.data;
  const pair = `${names.staff(swabber)}, ${names.staff(recorder)}`;
  return {
    key: `round-${round.id}`,
    state: tally.opened.length > 0 ? 'hand' : 'todo',
    when: words.dates.time(round.courier),
    who: pair,
    what: `${words.rounds.of(day)}. ${say.roundWhat(tally.packed.length, round.people.length)}`,
    why: [],
    action: link(words, {
      path: paths.round(round.id),
      text: say.open,
      about: words.rounds.of(day),
      main: true,
    }),
  };
}

function heldItem({ line, holds }: Of<'held'>, { desk, words, names }: Telling): WorkItem {
  const name = names.person(line.person.id);
  const [reason] = line.reasons;
  return {
    key: `held-${line.person.id}`,
    state: 'look',
    when: reason === undefined ? words.now.today : words.now.byDay(reason.by),
    what: holds.map((hold) => sayRefusal(hold, { words, home: desk.home })).join(' '),
    why: line.reasons.map(({ rule }) => words.rules[rule]),
    action: link(words, { path: paths.person(line.person.id), text: words.now.held, about: name }),
  };
}

/** People due for the same reason by the same day stand in one line: twelve names are one round. */
function dueItems(due: readonly Of<'due'>[], { desk, words, names }: Telling): WorkItem[] {
  const today = todayOf(desk);
  const together = new Map<string, Of<'due'>[]>();
  for (const each of due) {
    const [reason] = each.line.reasons;
    const key = `${reason?.rule ?? ''} ${reason?.by ?? ''}`;
    together.set(key, [...(together.get(key) ?? []), each]);
  }
  return [...together].flatMap(([key, lines]) => {
    const reason = lines[0]?.line.reasons[0];
    if (reason === undefined) return [];
    const calm = reason.rule === 'routine' && reason.by >= today;
    return {
      key: `due-${key}`,
      state: calm ? 'todo' : 'look',
      when: reason.by === today ? words.now.today : words.now.byDay(reason.by),
      who: '',
      what: words.now.due(lines.map(({ line }) => names.person(line.person.id))),
      why: [words.rules[reason.rule]],
    } satisfies WorkItem;
  });
}

function kitsItem({ lot }: Of<'kits-expire'>, { desk, words }: Telling): WorkItem {
  const say = words.now;
  const over = lot.expires < todayOf(desk);
  return {
    key: `kits-${lot.lot}`,
    state: over ? 'look' : 'todo',
    when: say.byDay(lot.expires),
    who: '',
    what: over ? say.kitsEnded(lot.left, lot.lot) : say.kitsEnd(lot.left, lot.lot, lot.expires),
    why: over ? [] : [say.usedFirst],
    action: link(words, { path: paths.kits, text: say.kits, about: lot.lot }),
  };
}

const policyItem = ({ words }: Telling): WorkItem => ({
  key: 'policy',
  state: 'look',
  when: words.now.today,
  what: words.now.confirm,
  why: [],
  action: link(words, {
    path: paths.policy,
    text: words.now.policy,
    about: words.now.groups.policy,
  }),
});

function practiceItem({ due }: Of<'practice'>, { words, names }: Telling): WorkItem {
  const say = words.now;
  const name = names.person(due.person);
  return {
    key: `practice-${due.person}`,
    state: 'todo',
    when: words.now.today,
    who: '',
    what: say.practise(name, due.step.title),
    why: [say.practiseHow(due.number, due.of, due.minutes)],
    action: link(words, {
      path: paths.practiceSession(due.person),
      text: say.session,
      about: name,
    }),
  };
}
