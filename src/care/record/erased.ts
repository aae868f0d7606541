import type { Fact } from '../catalogue.ts';
import { catalogue } from '../catalogue.ts';

/** Whether this entry once had a private part (a name, a note) and has it no longer. */
export const isErased = (fact: Fact): boolean =>
  catalogue[fact.kind].private !== undefined && fact.private === undefined;
