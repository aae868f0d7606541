/** Fields of a form that are a line of text each. */
type Texts<Field extends string> = Readonly<Record<Field, string>>;

/** The fields somebody changed here: only these are amended, so that nobody else's change is undone. */
export const changed = <Field extends string>(
  start: Texts<Field>,
  value: Texts<Field>,
): Partial<Record<Field, string>> => {
  const fields: Partial<Record<Field, string>> = {};
  for (const field of Object.keys(value) as Field[]) {
    if (value[field] !== start[field]) fields[field] = value[field];
  }
  return fields;
};

/**
 * Fields changed here that somebody else has changed too since the form was opened, to something else.
 * `now` is what the record says. Whoever keeps must have read it first.
 */
export const moved = <Field extends string>(
  { start, value }: { readonly start: Texts<Field>; readonly value: Texts<Field> },
  now: Texts<Field>,
): Field[] =>
  (Object.keys(changed(start, value)) as Field[]).filter(
    (field) => now[field] !== start[field] && now[field] !== value[field],
  );
