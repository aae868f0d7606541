/** What JSON can hold. */
export type Json =
  | null
  | boolean
  | number
  | string
  | readonly Json[]
  | { readonly [key: string]: Json };

/** A check's input that cannot be read: what is missing, or of another shape. */
export class InputError extends Error {}

const isObject = (value: Json | undefined): value is { readonly [key: string]: Json } =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Reads fields of a check's input; the first of several names that is there. Says which is missing. */
export class Input {
  constructor(readonly raw: Json) {}

  private find(names: readonly string[]): Json | undefined {
    if (!isObject(this.raw)) return undefined;
    for (const name of names) {
      const value = this.raw[name];
      if (value !== undefined) return value;
    }
    return undefined;
  }

  has(...names: readonly string[]): boolean {
    const value = this.find(names);
    return value !== undefined && value !== null;
  }

  get(...names: readonly string[]): Json {
    const value = this.find(names);
    if (value === undefined) throw new InputError(`the input has no ${names.join(' or ')}`);
    return value;
  }

  number(...names: readonly string[]): number {
    const value = this.get(...names);
    // A quotient such as "1.5/11" keeps a rate exact on paper.
    const quotient =
      typeof value === 'string'
        ? /^\s*([\d.eE+-]+)\s*(?:\/\s*([\d.eE+-]+)\s*)?$/.exec(value)
        : null;
    if (quotient) return Number(quotient[1]) / Number(quotient[2] ?? 1);
    if (value === null) return Number.NaN;
    if (typeof value !== 'number') throw new InputError(`${names.join(' or ')} is not a number`);
    return value;
  }

  numberOr(fallback: number, ...names: readonly string[]): number {
    return this.has(...names) ? this.number(...names) : fallback;
  }

  /** A list of numbers; a single number counts as a list of one. */
  numbers(...names: readonly string[]): readonly number[] {
    const value = this.get(...names);
    return Array.isArray(value)
      ? value.map((v) => (v === null ? Number.NaN : Number(v)))
      : [this.number(...names)];
  }

  text(...names: readonly string[]): string {
    const value = this.get(...names);
    if (typeof value !== 'string') throw new InputError(`${names.join(' or ')} is not a text`);
    return value;
  }

  textOr(fallback: string, ...names: readonly string[]): string {
    return this.has(...names) ? this.label(...names) : fallback;
  }

  /** A text, or a number used as a name. */
  label(...names: readonly string[]): string {
    const value = this.get(...names);
    if (typeof value !== 'string' && typeof value !== 'number')
      throw new InputError(`${names.join(' or ')} is not a text`);
    return String(value);
  }

  /** A list of lists of numbers. */
  rows(...names: readonly string[]): readonly (readonly number[])[] {
    return this.list(...names).map(({ raw }) => {
      if (!Array.isArray(raw) || raw.some((v: Json) => typeof v !== 'number' && v !== null))
        throw new InputError(`${names.join(' or ')} is not a list of lists of numbers`);
      return raw.map((v: Json) => (v === null ? Number.NaN : Number(v)));
    });
  }

  texts(...names: readonly string[]): readonly string[] {
    const value = this.get(...names);
    return (Array.isArray(value) ? value : [value]).map(String);
  }

  child(...names: readonly string[]): Input {
    return new Input(this.get(...names));
  }

  list(...names: readonly string[]): readonly Input[] {
    const value = this.get(...names);
    if (!Array.isArray(value)) throw new InputError(`${names.join(' or ')} is not a list`);
    return value.map((v: Json) => new Input(v));
  }

  entries(...names: readonly string[]): readonly (readonly [string, Json])[] {
    const value = this.get(...names);
    return isObject(value) ? Object.entries(value) : [];
  }
}
