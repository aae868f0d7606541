import type { JSX } from 'preact';
import { Route, Switch } from 'wouter-preact';
import type { StaffId } from '../../../care/ids.ts';
import { MemberForm } from './member-form.tsx';
import { MemberHoursForm } from './member-hours-form.tsx';
import { MemberKnowsForm } from './member-knows-form.tsx';
import { MemberLeftForm } from './member-left-form.tsx';
import { MemberScreen } from './member-screen.tsx';
import { StaffScreen } from './staff-screen.tsx';
import { WorksAsForm } from './works-as-form.tsx';

type OfStaff = (props: { readonly staff: StaffId }) => JSX.Element;

/** Pages about one colleague, by what stands after their id in the address. */
const pages: Readonly<Record<string, OfStaff>> = {
  edit: MemberForm,
  knows: MemberKnowsForm,
  hours: MemberHoursForm,
  left: MemberLeftForm,
  'works-as': WorksAsForm,
};

export function StaffPages(): JSX.Element {
  return (
    <Switch>
      <Route path="/staff" component={StaffScreen} />
      <Route path="/staff/new">
        <MemberForm />
      </Route>
      <Route path="/staff/:id">
        {({ id }: { id: StaffId }) => <MemberScreen key={id} staff={id} />}
      </Route>
      <Route path="/staff/:id/:page">
        {({ id, page }: { id: StaffId; page: string }) => {
          const Page = pages[page] ?? MemberScreen;
          return <Page key={`${page} ${id}`} staff={id} />;
        }}
      </Route>
    </Switch>
  );
}
