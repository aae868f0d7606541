import type { JSX } from 'preact';
import { helperWishes } from '../../../care/people/helpers.ts';
import { unitOf } from '../../../care/people/unit.ts';
import { everyMember, workingHere } from '../../../care/staff/member.ts';
import { sitesOn } from '../../../care/support/plan.ts';
import { yearsBetween } from '../../../care/time.ts';
import { namesIn } from '../../desk/names.ts';
import { sayHelpers } from '../../desk/say-helpers.ts';
import { sayTimes } from '../../desk/say-usual-times.ts';
import { Button } from '../../pieces/form/button.tsx';
import { DetailList } from '../../pieces/list/detail-list.tsx';
import { Part } from '../../pieces/page/part.tsx';
import { paths, to } from '../paths.ts';
import { sayWhere } from '../people/where-words.ts';
import type { PersonData } from './person-data.ts';
import { nameOf } from './person-data.ts';

interface AmendProps extends PersonData {
  readonly path: string;
  readonly part: string;
}

/** Several parts have a button that reads alike; to a screen reader each says which. */
const Amend = ({ words, path, part }: AmendProps): JSX.Element => (
  <Button href={to(path)} label={words.record.amendPart(part)}>
    {words.record.amend}
  </Button>
);

/** Who somebody is, as it stands in the record. */
export function WhoPart(data: PersonData): JSX.Element {
  const { desk, words, person, today } = data;
  const { record, people } = words;
  const known = [
    ['name', nameOf(data)],
    ['called', person.called],
    ['born', person.born && record.bornAge(person.born, yearsBetween(person.born, today))],
    ['room', person.room],
    ['unit', person.unit && unitOf(desk.home, person.unit).name],
    ['identifier', person.identifier],
    ['note', person.note],
  ] as const;
  return (
    <Part
      title={record.parts.who}
      action={<Amend {...data} path={paths.editPerson(person.id)} part={record.parts.who} />}
    >
      <DetailList
        details={known.flatMap(([key, value]) =>
          value ? [{ key, label: people.fields[key], value }] : [],
        )}
      />
    </Part>
  );
}

/** Where somebody is: here and since when, in hospital, away, or gone. */
export function WherePart({ words, person }: PersonData): JSX.Element {
  const { record } = words;
  const { whereabouts } = person;
  const since =
    whereabouts.where === 'here' && whereabouts.since !== undefined
      ? record.sinceHere(whereabouts.since)
      : record.hereNow;
  return (
    <Part title={record.parts.where}>
      <p class="capital">{whereabouts.where === 'here' ? since : sayWhere(whereabouts, words)}</p>
    </Part>
  );
}

/** Which sites, how they say who they are, and by whose hand. */
export function WaysPart(data: PersonData): JSX.Element {
  const { words, person, plan, today } = data;
  const { record } = words;
  const clinician = sitesOn(plan, today) !== plan.sites;
  return (
    <Part
      title={record.parts.ways}
      action={<Amend {...data} path={paths.ways(person.id)} part={record.parts.ways} />}
    >
      <DetailList
        details={[
          {
            key: 'sites',
            label: record.waysLabels.sites,
            value: clinician ? record.clinicianNose : record.sites[plan.sites],
          },
          {
            key: 'identity',
            label: record.waysLabels.identity,
            value: record.identity[plan.identity],
          },
          {
            key: 'self',
            label: record.waysLabels.self,
            value: plan.selfSwab ? record.selfSwab : record.noSelfSwab,
          },
        ]}
      />
    </Part>
  );
}

/** When they are usually seen for a swab, and when they are out. */
export function TimesPart(data: PersonData): JSX.Element {
  const { words, person } = data;
  const title = words.usual.parts.times;
  return (
    <Part title={title} action={<Amend {...data} path={paths.times(person.id)} part={title} />}>
      <p>{sayTimes(person.times, words)}</p>
    </Part>
  );
}

/** Whom they want for a swab and whom not, who told of it, and why. */
export function HelpersPart(data: PersonData): JSX.Element {
  const { desk, words, person } = data;
  const { part: title, told, tellers } = words.helpers;
  const wishes = helperWishes(desk.home, person.id);
  const names = namesIn(desk.home, words.refusals.somebody);
  return (
    <Part title={title} action={<Amend {...data} path={paths.helpers(person.id)} part={title} />}>
      <p>{sayHelpers(wishes, words, names)}</p>
      {wishes.told !== undefined && (
        <p class="soft">
          {told(tellers[wishes.told])} {wishes.reason}
        </p>
      )}
    </Part>
  );
}

/** Colleagues working here who know this person by sight. */
export function KnownByPart(data: PersonData): JSX.Element {
  const { desk, words, person, today } = data;
  const { record } = words;
  const names = everyMember(desk.home)
    .filter((member) => member.knows.has(person.id) && workingHere(member, today))
    .map((member) => member.called);
  return (
    <Part
      title={record.parts.knownBy}
      action={<Amend {...data} path={paths.knownBy(person.id)} part={record.parts.knownBy} />}
    >
      <p>{names.length === 0 ? record.noKnownBy : record.names(names)}</p>
    </Part>
  );
}
