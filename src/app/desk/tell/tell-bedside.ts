import type { Kind } from '../../../care/catalogue.ts';
import type { Tells } from './telling.ts';
import { seconds } from './telling.ts';

type Bedside = Extract<
  Kind,
  | `turn.${string}`
  | `identity.${string}`
  | `willingness.${string}`
  | `stop.${string}`
  | 'kit.opened'
  | 'kit.checked'
  | 'kit.spoiled'
  | `label.${string}`
  | `way.${string}`
  | `site.${string}`
  | `swab.${string}`
  | `tube.${string}`
  | `tablet.${string}`
>;

/** One person's turn, from fresh gloves to the sealed bag. */
export const tellBedside: Tells<Bedside> = {
  'turn.opened': ({ data }, { words, names }) =>
    words.facts.turnOpened(
      names.person(data.person),
      names.staff(data.swabber),
      names.staff(data.recorder),
    ),
  'identity.established': ({ data }, telling) => sayIdentity(data, telling),
  'identity.lapsed': (_fact, { words }) => words.facts.identityLapsed,
  'willingness.seen': ({ data }, { words }) => words.facts.willing[data.answer],
  'turn.stopped': (_fact, { words }) => words.facts.stopped,
  'stop.mistaken': (_fact, { words }) => words.facts.stopMistaken,
  'stop.explained': ({ data }, { words }) => words.facts.stopWhy(words.turn.stops[data.why]),
  'turn.interrupted': (_fact, { words }) => words.facts.interrupted,
  'turn.resumed': ({ data }, { words, names }) =>
    `${words.facts.resumed(names.staff(data.swabber), names.staff(data.recorder))} ${words.facts.tube[data.tube]}`,
  'turn.closed': ({ data }, { words }) => words.facts.ends[data.end],
  'kit.opened': ({ data }, { words }) =>
    data.lot === undefined || data.expires === undefined
      ? words.facts.kitOpened(data.code)
      : `${words.facts.kitOpened(data.code)} ${words.facts.kitLot(data.lot, data.expires)}`,
  'kit.checked': (_fact, { words }) => words.facts.kitChecked,
  'label.read': ({ data }, { words }) => words.facts.labelRead(data.place, data.code),
  'way.chosen': ({ data }, { words }) =>
    words.facts.way(data.sites === 'nose-only', data.taker === 'person'),
  'site.started': ({ data }, { words }) => words.facts.siteStarted(words.facts.sites[data.site]),
  'site.ended': ({ data }, { words }) =>
    words.facts.siteEnded(words.facts.sites[data.site], seconds(data.ms)),
  'swab.taken': ({ data }, { words }) => {
    const sites = data.sites.map(({ site, ms }) =>
      ms === undefined
        ? words.facts.sites[site]
        : words.facts.siteFor(words.facts.sites[site], seconds(ms)),
    );
    const said = words.facts.taken(sites, data.taker === 'person');
    return data.short === undefined ? said : `${said} ${words.facts.short}`;
  },
  'tube.closed': (_fact, { words }) => words.facts.tubeClosed,
  'tube.sealed': (_fact, { words }) => words.facts.tubeSealed,
  'kit.spoiled': ({ data }, { words }) => words.facts.spoiled(words.turn.faults[data.why]),
  'tablet.touched': (_fact, { words }) => words.facts.touched,
  'tablet.wiped': (_fact, { words }) => words.facts.wiped,
};

type Identity = Parameters<Tells<'identity.established'>['identity.established']>;

/** Whether it was theirs is only known beside the turn it was for: see tell-fact. */
function sayIdentity(data: Identity[0]['data'], { words, person }: Identity[1]): string {
  if (data.paper !== undefined) return words.facts.identityOnPaper[data.way];
  return words.facts.identity(data.way, data.chosen === person, data.chosen === 'none');
}
