import type { Fact, FactOf, Kind } from '../../../care/catalogue.ts';
import { turnOf } from '../../../care/custody/turn.ts';
import type { Home } from '../../../care/home.ts';
import type { PersonId } from '../../../care/ids.ts';
import type { AllWords } from '../../words/en-all.ts';
import { namesIn } from '../names.ts';
import { tellAfter } from './tell-after.ts';
import { tellBedside } from './tell-bedside.ts';
import { tellRecords } from './tell-records.ts';
import type { Telling, Tells } from './telling.ts';

// A new kind of fact without words does not compile.
const tells: Tells<Kind> = { ...tellRecords, ...tellBedside, ...tellAfter };

/** A fact in words for staff and inspectors. */
export function tellFact(fact: Fact, { home, words }: { home: Home; words: AllWords }): string {
  const names = namesIn(home, words.refusals.somebody);
  const tell = tells[fact.kind] as (fact: FactOf<Kind>, telling: Telling) => string;
  return tell(fact as FactOf<Kind>, { words, names, person: personIn(home, fact) });
}

/** Whose turn a fact of the bedside belongs to. */
function personIn(home: Home, fact: Fact): PersonId | undefined {
  return 'turn' in fact.data ? turnOf(home, fact.data.turn)?.person : undefined;
}
