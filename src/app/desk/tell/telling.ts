import type { FactOf, Kind } from '../../../care/catalogue.ts';
import type { PersonId } from '../../../care/ids.ts';
import type { AllWords } from '../../words/en-all.ts';
import type { Names } from '../names.ts';

/** What is needed to say a fact in words. */
export interface Telling {
  readonly words: AllWords;
  readonly names: Names;
  /** Whose turn it was, for facts of the bedside. */
  readonly person: PersonId | undefined;
}

/** One sentence or two for each kind of fact of a subject. */
export type Tells<K extends Kind> = {
  readonly [Each in K]: (fact: FactOf<Each>, telling: Telling) => string;
};

export const seconds = (ms: number): number => Math.round(ms / 1000);
