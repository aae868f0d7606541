import type { JSX } from 'preact';
import { Route, Switch } from 'wouter-preact';
import type { RoundId } from '../../care/ids.ts';
import { EditRoundScreen, NewRoundScreen } from './prepare/prepare-screen.tsx';
import { RoundsScreen } from './rounds/rounds-screen.tsx';
import { RunSheetScreen } from './run-sheet/run-sheet-screen.tsx';

/** The pages around the bedside. They come in a script of their own: the bedside does not wait for them. */
export function RoundWorkPages(): JSX.Element {
  return (
    <Switch>
      <Route path="/rounds" component={RoundsScreen} />
      <Route path="/rounds/new" component={NewRoundScreen} />
      <Route path="/round/:id/sheet">
        {({ id }: { id: RoundId }) => <RunSheetScreen round={id} />}
      </Route>
      <Route path="/round/:id/edit">
        {({ id }: { id: RoundId }) => <EditRoundScreen key={id} round={id} />}
      </Route>
    </Switch>
  );
}
