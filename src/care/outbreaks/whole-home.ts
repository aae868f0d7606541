import type { FactOf } from '../catalogue.ts';
import type { Home } from '../home.ts';
import { factsIn, standing } from '../home.ts';

/** What asked for the whole home and still counts, oldest first. */
export const wholeHomeAsked = (home: Home): FactOf<'home.tested-on'>[] =>
  standing(factsIn(home, 'policy', 'home-rounds'), 'home.tested-on');
