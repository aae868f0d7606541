/** Fields of a form that are a line of text each, or one of a few words. */
export type Texts<Fields> = { readonly [Field in keyof Fields]: string };

const keysOf = <Fields extends object>(fields: Fields) =>
  Object.keys(fields) as (keyof Fields & string)[];

/** The fields somebody changed here: only these are amended, so that nobody else's change is undone. */
export function changed<Fields extends Texts<Fields>>(
  start: Fields,
  value: Fields,
): Partial<Fields> {
  const fields: Partial<Fields> = {};
  for (const field of keysOf(value)) {
    if (value[field] !== start[field]) fields[field] = value[field];
  }
  return fields;
}

/**
 * Fields changed here that somebody else has changed too since the form was opened, to something else.
 * `now` is what the record says. Whoever keeps must have read it first.
 */
export const moved = <Fields extends Texts<Fields>>(
  { start, value }: { readonly start: Fields; readonly value: Fields },
  now: Fields,
): (keyof Fields & string)[] =>
  keysOf(value).filter(
    (field) =>
      value[field] !== start[field] && now[field] !== start[field] && now[field] !== value[field],
  );
