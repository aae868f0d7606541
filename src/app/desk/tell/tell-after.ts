import type { Kind } from '../../../care/catalogue.ts';
import type { Tells } from './telling.ts';

type After = Extract<
  Kind,
  | `kits.${string}`
  | `lot.${string}`
  | 'kit.put-aside'
  | 'code.elsewhere'
  | `ppe.${string}`
  | `round.${string}`
  | `box.${string}`
  | `bag.${string}`
  | `courier.${string}`
  | `test.${string}`
  | `registration.${string}`
  | `upload.${string}`
  | `report.${string}`
  | `result.${string}`
  | `action.${string}`
  | 'settled'
>;

/** What is done around the bedside: supplies, the round, its boxes, registering, results, settling. */
export const tellAfter: Tells<After> = {
  'kits.delivered': ({ data }, { words }) => words.facts.kitsCame(data.count, data.lot),
  'kits.unpacked': ({ data }, { words }) => words.facts.kitsUnpacked(data.codes.length),
  'kits.counted': ({ data }, { words }) => words.facts.kitsCounted(data.count, data.lot),
  'lot.recalled': ({ data }, { words }) => words.facts.lotRecalled(data.lot),
  'kit.put-aside': (_fact, { words }) => words.facts.kitAside,
  'code.elsewhere': ({ data, private: hidden }, { words }) =>
    words.facts.codeElsewhere(data.code, hidden?.title),
  'ppe.counted': ({ data }, { words }) => words.facts.ppeCounted(data.count),
  'round.planned': ({ data }, { words }) => words.facts.roundPlanned(data.day, data.courier),
  'round.listed': ({ data }, { words, names }) =>
    words.facts.roundListed(data.people.map(({ person }) => names.person(person))),
  'box.started': (_fact, { words }) => words.facts.boxStarted,
  'box.closed': ({ data }, { words }) => words.facts.boxClosed(data.members.length, data.wiped),
  'box.handed': ({ data, private: hidden }, { words }) =>
    words.facts.boxHanded(hidden?.courier ?? words.facts.erased, data.count, data.seal),
  'bag.packed': ({ data }, { words }) => words.facts.packed(data.code),
  'courier.missed': ({ data }, { words }) => words.facts.courierMissed(data.due),
  'courier.rebooked': ({ data }, { words, names }) =>
    words.facts.courierRebooked(data.due, names.staff(data.who)),
  'round.closed': ({ data }, { words }) =>
    words.facts.roundClosed(data.packed.length, data.spoiled.length),
  'test.registered': ({ data }, { words }) => words.facts.registered(data.reference),
  'registration.failed': ({ data }, { words, names }) =>
    `${words.facts.failures[data.why]} ${words.facts.nextTry(data.nextTry, names.staff(data.who))}`,
  'upload.set': ({ data }, { words }) => words.facts.uploadSet(data.columns.length),
  'report.received': ({ data }, { words }) =>
    words.facts.reportCame(
      words.takingIn.sources[data.source],
      data.outcome === undefined ? words.facts.reportUnclear : words.outcomes[data.outcome],
    ),
  'report.settled': ({ data, private: hidden }, { words }) =>
    [words.facts.reportSettled[data.verdict], hidden?.reason ?? ''].join(' ').trim(),
  'report.mapping': ({ data }, { words }) => words.facts.reportMapping(data.columns.length),
  'result.recorded': ({ data }, { words }) =>
    `${words.facts.result(words.outcomes[data.outcome], data.reported)} ${words.facts.matched[data.matched]}`,
  'result.chased': ({ data, private: hidden }, { words }) => {
    const { erased } = words.facts;
    const rang = words.facts.chased(hidden?.whom ?? erased, hidden?.said ?? erased);
    return data.next === undefined ? rang : `${rang} ${words.facts.ringAgain(data.next)}`;
  },
  'action.named': ({ data }, { words, names }) =>
    words.facts.actionNamed(words.now.actions[data.action], names.staff(data.who), data.due),
  'action.done': ({ data, private: hidden }, { words }) => {
    const said = words.facts.actionDone(words.now.actions[data.action], data.outcome === 'done');
    return [said, hidden?.note ?? ''].join(' ').trim();
  },
  settled: ({ data, private: hidden }, { words }) =>
    [words.facts.verdicts[data.verdict], hidden?.reason ?? ''].join(' ').trim(),
};
