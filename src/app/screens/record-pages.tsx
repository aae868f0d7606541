import type { JSX } from 'preact';
import { Route, Switch } from 'wouter-preact';
import { AddPersonScreen } from './people/add-person-screen.tsx';
import { PeopleScreen } from './people/people-screen.tsx';
import { PersonPages } from './person/person-pages.tsx';
import { StaffPages } from './staff/staff-pages.tsx';
import './records.css';

/** The pages of the records. They come in a script of their own: the bedside does not wait for them. */
export function RecordPages(): JSX.Element {
  return (
    <Switch>
      <Route path="/people" component={PeopleScreen} />
      <Route path="/people/new" component={AddPersonScreen} />
      <Route path={/^\/person\//} component={PersonPages} />
      <Route path={/^\/staff(\/|$)/} component={StaffPages} />
    </Switch>
  );
}
