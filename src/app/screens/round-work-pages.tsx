import type { JSX } from 'preact';
import { Route, Switch } from 'wouter-preact';
import type { PersonId, ReportId, RoundId, TestId } from '../../care/ids.ts';
import { ActScreen } from './act/act-screen.tsx';
import { CallListScreen } from './calls/call-list-screen.tsx';
import { FindingScreen } from './finding/finding-screen.tsx';
import { FindingsScreen } from './finding/findings-screen.tsx';
import { PaperListScreen } from './from-paper/paper-list-screen.tsx';
import { PaperTurnScreen } from './from-paper/paper-turn-screen.tsx';
import { HandOverScreen } from './hand-over/hand-over-screen.tsx';
import { HouseScreen } from './house/house-screen.tsx';
import { latePage } from './late-page.tsx';
import { NewResultScreen } from './new-result/new-result-screen.tsx';
import { PackScreen } from './pack/pack-screen.tsx';
import { EditRoundScreen, NewRoundScreen } from './prepare/prepare-screen.tsx';
import { prepareSteps } from './prepare/steps.ts';
import { RegisterListScreen } from './register/list-screen.tsx';
import { RegisterScreen } from './register/register-screen.tsx';
import { ChaseScreen } from './results/chase-screen.tsx';
import { ResultsScreen } from './results/results-screen.tsx';
import { RoundsScreen } from './rounds/rounds-screen.tsx';
import { RunSheetScreen } from './run-sheet/run-sheet-screen.tsx';
import { EvidenceScreen } from './test/evidence-screen.tsx';
import { TestScreen } from './test/test-screen.tsx';
import { ReportScreen } from './tray/report-screen.tsx';
import { TrayScreen } from './tray/tray-screen.tsx';
import { SetUploadScreen } from './upload/set-upload-screen.tsx';
import { UploadScreen } from './upload/upload-screen.tsx';

/** Files come in once in a while, and with parsers: a script of their own. */
const TakeInScreen = latePage(() =>
  import('./take-in/take-in-screen.tsx').then((page) => page.TakeInScreen),
);

const ORDER = prepareSteps.indexOf('order');

/** The pages around the bedside. They come in a script of their own: the bedside does not wait for them. */
export function RoundWorkPages(): JSX.Element {
  return (
    <Switch>
      <Route path="/rounds" component={RoundsScreen} />
      <Route path="/rounds/new" component={NewRoundScreen} />
      <Route path="/round/:id/sheet">
        {({ id }: { id: RoundId }) => <RunSheetScreen round={id} />}
      </Route>
      <Route path="/round/:id/paper">
        {({ id }: { id: RoundId }) => <PaperListScreen round={id} />}
      </Route>
      <Route path="/round/:id/paper/:person">
        {({ id, person }: { id: RoundId; person: PersonId }) => (
          <PaperTurnScreen key={person} round={id} person={person} />
        )}
      </Route>
      <Route path="/round/:id/pack">
        {({ id }: { id: RoundId }) => <PackScreen key={id} round={id} />}
      </Route>
      <Route path="/round/:id/hand-over">
        {({ id }: { id: RoundId }) => <HandOverScreen key={id} round={id} />}
      </Route>
      <Route path="/round/:id/register">
        {({ id }: { id: RoundId }) => <RegisterScreen key={id} round={id} />}
      </Route>
      <Route path="/round/:id/register-list">
        {({ id }: { id: RoundId }) => <RegisterListScreen round={id} />}
      </Route>
      <Route path="/round/:id/upload">
        {({ id }: { id: RoundId }) => <UploadScreen key={id} round={id} />}
      </Route>
      <Route path="/results" component={ResultsScreen} />
      <Route path="/results/new" component={NewResultScreen} />
      <Route path="/test/:id">
        {({ id }: { id: TestId }) => <TestScreen key={id} test={id} />}
      </Route>
      <Route path="/findings" component={FindingsScreen} />
      <Route path="/finding/:id">
        {({ id }: { id: string }) => <FindingScreen key={id} id={id} />}
      </Route>
      <Route path="/test/:id/evidence">
        {({ id }: { id: TestId }) => <EvidenceScreen key={id} test={id} />}
      </Route>
      <Route path="/results/take-in" component={TakeInScreen} />
      <Route path="/results/calls" component={CallListScreen} />
      <Route path="/results/house" component={HouseScreen} />
      <Route path="/results/tray" component={TrayScreen} />
      <Route path="/results/tray/:id">
        {({ id }: { id: ReportId }) => <ReportScreen key={id} report={id} />}
      </Route>
      <Route path="/test/:id/act">
        {({ id }: { id: TestId }) => <ActScreen key={id} test={id} />}
      </Route>
      <Route path="/test/:id/chase">
        {({ id }: { id: TestId }) => <ChaseScreen key={id} test={id} />}
      </Route>
      <Route path="/upload/:test">
        {({ test }: { test: string }) => <SetUploadScreen key={test} test={test} />}
      </Route>
      <Route path="/round/:id/edit">
        {({ id }: { id: RoundId }) => <EditRoundScreen key={id} round={id} />}
      </Route>
      <Route path="/round/:id/replan">
        {({ id }: { id: RoundId }) => <EditRoundScreen key={id} round={id} step={ORDER} />}
      </Route>
    </Switch>
  );
}
