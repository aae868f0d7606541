import type { JSX } from 'preact';
import { Route, Switch } from 'wouter-preact';
import type { FactId } from '../../care/ids.ts';
import { KitsPages } from './kits/kits-pages.tsx';
import { LabelSheetPage } from './labels/label-sheet-page.tsx';
import { latePage } from './late-page.tsx';
import { MoreScreen } from './more/more-screen.tsx';
import { AddPersonScreen } from './people/add-person-screen.tsx';
import { CallOffForm } from './people/call-off-form.tsx';
import { PeopleScreen } from './people/people-screen.tsx';
import { WholeHomeForm } from './people/whole-home-form.tsx';
import { PersonPages } from './person/person-pages.tsx';
import { ConfirmForm } from './policy/confirm-form.tsx';
import { DecidingForm } from './policy/deciding-form.tsx';
import { LadderForm } from './policy/ladder-form.tsx';
import { PolicyScreen } from './policy/policy-screen.tsx';
import { StaffPages } from './staff/staff-pages.tsx';
import { TabletsScreen } from './tablets/tablets-screen.tsx';
import './records.css';

/** Lists come in once in a while, and with a parser: a script of their own. */
const ImportPeople = latePage(() =>
  import('./import/import-pages.tsx').then((pages) => pages.ImportPeople),
);
const ImportStaff = latePage(() =>
  import('./import/import-pages.tsx').then((pages) => pages.ImportStaff),
);

/** The pages of the records. They come in a script of their own: the bedside does not wait for them. */
export function RecordPages(): JSX.Element {
  return (
    <Switch>
      <Route path="/people" component={PeopleScreen} />
      <Route path="/people/new" component={AddPersonScreen} />
      <Route path="/people/whole-home" component={WholeHomeForm} />
      <Route path="/people/whole-home/:asked/call-off">
        {({ asked }: { asked: string }) => <CallOffForm asked={asked as FactId} />}
      </Route>
      <Route path="/people/import" component={ImportPeople} />
      <Route path="/staff/import" component={ImportStaff} />
      <Route path={/^\/person\//} component={PersonPages} />
      <Route path={/^\/staff(\/|$)/} component={StaffPages} />
      <Route path="/kits/labels/:kitKind">
        {({ kitKind }: { kitKind: string }) => <LabelSheetPage kitKind={kitKind} />}
      </Route>
      <Route path={/^\/kits(\/|$)/} component={KitsPages} />
      <Route path="/policy" component={PolicyScreen} />
      <Route path="/policy/confirm" component={ConfirmForm} />
      <Route path="/policy/practice" component={LadderForm} />
      <Route path="/policy/decisions" component={DecidingForm} />
      <Route path="/tablets" component={TabletsScreen} />
      <Route path="/more" component={MoreScreen} />
    </Switch>
  );
}
