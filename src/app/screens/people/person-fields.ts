import type { Home } from '../../../care/home.ts';
import type { Person } from '../../../care/people/person.ts';
import { unitOf } from '../../../care/people/unit.ts';

/** The form of who somebody is: a text each; `photo` is a data URL, `unit` a name. */
export interface PersonFields {
  readonly name: string;
  readonly called: string;
  readonly born: string;
  readonly room: string;
  readonly unit: string;
  readonly identifier: string;
  readonly note: string;
  readonly photo: string;
}

export const noPerson: PersonFields = {
  ...{ name: '', called: '', born: '', room: '' },
  ...{ unit: '', identifier: '', note: '', photo: '' },
};

/** What the record says now. What they like to be called is empty where nobody wrote it down. */
export const fieldsOf = (home: Home, person: Person): PersonFields => ({
  name: person.name,
  called: person.called === person.name.split(' ')[0] ? '' : person.called,
  born: person.born ?? '',
  room: person.room,
  unit: person.unit === undefined ? '' : unitOf(home, person.unit).name,
  identifier: person.identifier,
  note: person.note,
  photo: person.photo ?? '',
});
