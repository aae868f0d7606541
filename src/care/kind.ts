import * as v from 'valibot';
import { factId } from './ids.ts';

/** The bags in which a fact is filed, by what it is about. */
export type Shelf =
  | 'person'
  | 'staff'
  | 'unit'
  | 'policy'
  | 'lot'
  | 'code'
  | 'ppe'
  | 'round'
  | 'turn'
  | 'test'
  | 'box'
  | 'reference'
  | 'report'
  | 'action'
  | 'finding'
  | 'practice';
export type Filing = readonly (readonly [Shelf, string])[];

type Entries = v.ObjectEntries;

export interface KindOf<D extends Entries, P extends Entries | undefined> {
  /** Version of the shape of `data`. Older ones are brought up to date as they are read. */
  readonly v: number;
  readonly data: v.StrictObjectSchema<D, undefined>;
  /** What is kept apart from the body so that it can be erased: names, birth dates, free text. */
  readonly private: P extends Entries ? v.StrictObjectSchema<P, undefined> : undefined;
  readonly files: (data: v.InferOutput<v.StrictObjectSchema<D, undefined>>) => Filing;
}

interface Definition<D extends Entries, P extends Entries | undefined> {
  readonly v?: number;
  readonly data: D;
  readonly private?: P;
  readonly files: (data: v.InferOutput<v.StrictObjectSchema<D, undefined>>) => Filing;
}

/** Defines one kind of fact: its data (ids, codes, times, closed words), its private part, its bags. */
export const kind = <const D extends Entries, const P extends Entries | undefined = undefined>(
  definition: Definition<D, P>,
): KindOf<D, P> => ({
  v: definition.v ?? 1,
  data: v.strictObject(definition.data),
  private: (definition.private && v.strictObject(definition.private)) as KindOf<D, P>['private'],
  files: definition.files,
});

/** An amendment is a fact of the same kind that names those it stands in for. */
export const replaces = v.exactOptional(v.array(factId));

const text = (max: number) => v.pipe(v.string(), v.minLength(1), v.maxLength(max));
export const word = text(60);
export const line = text(500);
export const prose = text(4000);
/** A picture as a data URL, small enough to travel inside a fact's private part. */
export const picture = v.pipe(text(60_000), v.startsWith('data:image/'));
/** A barcode as it was read. What is inside is the scheme's business, not the ledger's. */
export const code = v.pipe(v.string(), v.regex(/^[\x21-\x7e]{4,48}$/), v.brand('Code'));
export type Code = v.InferOutput<typeof code>;
/** How a code came into the record. */
export const how = v.picklist(['scanned', 'typed-twice']);
export type How = v.InferOutput<typeof how>;
export const count = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(1_000_000));
