import { charts } from './adapters/charts.ts';
import { diagnostics } from './adapters/diagnostics.ts';
import { distributions } from './adapters/distributions.ts';
import { epidemics } from './adapters/epidemics.ts';
import { freedom } from './adapters/freedom.ts';
import { identity } from './adapters/identity.ts';
import { lanes } from './adapters/lanes.ts';
import { proportions } from './adapters/proportions.ts';
import { scheduling } from './adapters/scheduling.ts';
import { stock } from './adapters/stock.ts';
import { survival } from './adapters/survival.ts';
import type { Adapters } from './check.ts';

/** Every function that an outside check may name. */
export const ADAPTERS: Adapters = {
  ...distributions,
  ...diagnostics,
  ...freedom,
  ...proportions,
  ...survival,
  ...identity,
  ...charts,
  ...epidemics,
  ...stock,
  ...scheduling,
  ...lanes,
};
