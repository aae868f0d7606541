import type { JSX } from 'preact';
import { Route, Switch } from 'wouter-preact';
import { RoundsScreen } from './rounds/rounds-screen.tsx';

/** The pages around the bedside. They come in a script of their own: the bedside does not wait for them. */
export function RoundWorkPages(): JSX.Element {
  return (
    <Switch>
      <Route path="/rounds" component={RoundsScreen} />
    </Switch>
  );
}
