import type { JSX } from 'preact';
import { Route, Switch } from 'wouter-preact';
import type { FactId, PersonId, TestId } from '../../../care/ids.ts';
import { DecisionForm } from '../decision/decision-form.tsx';
import { DecisionScreen } from '../decision/decision-screen.tsx';
import { BookletScreen, StoryScreen } from '../easy-read/booklet-screen.tsx';
import { StripScreen } from '../easy-read/strip-screen.tsx';
import { LetterScreen } from '../letters/letter-screen.tsx';
import { EditPersonScreen } from '../people/edit-person-screen.tsx';
import { PracticeForm } from '../practice/practice-form.tsx';
import { SessionScreen } from '../practice/session-screen.tsx';
import { AfterForm } from './forms/after-form.tsx';
import { AnswerForm } from './forms/answer-form.tsx';
import { CautionForm } from './forms/caution-form.tsx';
import { ContactForm } from './forms/contact-form.tsx';
import { HelpersForm } from './forms/helpers-form.tsx';
import { KnownByForm } from './forms/known-by-form.tsx';
import { PlanForm } from './forms/plan-form.tsx';
import { PreparationForm } from './forms/preparation-form.tsx';
import { SharingForm } from './forms/sharing-form.tsx';
import { StrikeForm } from './forms/strike-form.tsx';
import { SymptomsForm } from './forms/symptoms-form.tsx';
import { TimesForm } from './forms/times-form.tsx';
import { WaysForm } from './forms/ways-form.tsx';
import { WhereaboutsForm } from './forms/whereabouts-form.tsx';
import { PersonScreen } from './person-screen.tsx';

type OfPerson = (props: { readonly person: PersonId }) => JSX.Element;

/** Pages about one person, by what stands after their id in the address. */
const pages: Readonly<Record<string, OfPerson>> = {
  edit: EditPersonScreen,
  plan: PlanForm,
  consent: DecisionForm,
  practice: PracticeForm,
  session: SessionScreen,
  strip: StripScreen,
  booklet: BookletScreen,
  story: StoryScreen,
  after: AfterForm,
  sharing: SharingForm,
  ways: WaysForm,
  times: TimesForm,
  helpers: HelpersForm,
  caution: CautionForm,
  preparation: PreparationForm,
  whereabouts: WhereaboutsForm,
  symptoms: SymptomsForm,
  contact: ContactForm,
  'known-by': KnownByForm,
};

export function PersonPages(): JSX.Element {
  return (
    <Switch>
      <Route path="/person/:id">
        {({ id }: { id: PersonId }) => <PersonScreen key={id} person={id} />}
      </Route>
      <Route path="/person/:id/caution/:fact">
        {({ id, fact }: { id: PersonId; fact: FactId }) => (
          <AnswerForm key={fact} person={id} caution={fact} />
        )}
      </Route>
      <Route path="/person/:id/decision/:fact">
        {({ id, fact }: { id: PersonId; fact: FactId }) => (
          <DecisionScreen key={fact} person={id} decision={fact} />
        )}
      </Route>
      <Route path="/person/:id/letter/:test/:reader">
        {({ id, test, reader }: { id: PersonId; test: TestId; reader: string }) => (
          <LetterScreen key={test + reader} person={id} test={test} reader={reader} />
        )}
      </Route>
      <Route path="/person/:id/strike-out/:fact">
        {({ id, fact }: { id: PersonId; fact: FactId }) => (
          <StrikeForm key={fact} person={id} entry={fact} />
        )}
      </Route>
      <Route path="/person/:id/:page">
        {({ id, page }: { id: PersonId; page: string }) => {
          const Page = pages[page] ?? PersonScreen;
          return <Page key={`${page} ${id}`} person={id} />;
        }}
      </Route>
    </Switch>
  );
}
