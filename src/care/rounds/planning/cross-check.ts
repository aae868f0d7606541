import { plannedMinutes } from './minutes.ts';

/** What is wrong, and the path to it. */
export interface Fault {
  readonly at: readonly (string | number)[];
  readonly message: string;
}

interface Span {
  readonly from: number;
  readonly until: number;
}

/** What is looked at of an instance: it reads the schema's own result, so it cannot know the schema. */
interface Checked {
  readonly people: readonly {
    readonly id: string;
    readonly preferred: readonly string[];
    readonly excluded: readonly string[];
    readonly windows: readonly Span[];
    readonly meals: readonly Span[];
    readonly minutes: { readonly mean: number };
  }[];
  readonly staff: readonly {
    readonly id: string;
    readonly shift: Span;
    readonly away: readonly Span[];
  }[];
  readonly rules: { readonly apart: readonly (readonly [string, string])[] };
  readonly done: readonly (Span & { readonly swabber: string; readonly recorder: string })[];
  readonly promised: readonly { readonly person: string }[];
}

type Path = readonly (string | number)[];

const backwards = (at: Path, { from, until }: Span): Fault[] =>
  from < until ? [] : [{ at, message: 'ends before it begins' }];

const spans = (at: Path, list: readonly Span[]): Fault[] =>
  list.flatMap((span, i) => backwards([...at, i], span));

function doubles(at: Path, ids: readonly string[]): Fault[] {
  return ids.flatMap((id, i) =>
    ids.indexOf(id) < i ? [{ at: [...at, i], message: `"${id}" is there twice` }] : [],
  );
}

/** What no field shows by itself: unknown names, windows too short, one name for two. */
export function crossCheck(instance: Checked): readonly Fault[] {
  const { people, staff, rules, done, promised } = instance;
  const known = new Set(staff.map(({ id }) => id));
  const unknown = (at: Path, id: string): Fault[] =>
    known.has(id) ? [] : [{ at, message: `there is no member of staff "${id}"` }];
  const unknowns = (at: Path, ids: readonly string[]): Fault[] =>
    ids.flatMap((id, i) => unknown([...at, i], id));
  return [
    ...doubles(
      ['people'],
      people.map(({ id }) => id),
    ),
    ...doubles(
      ['staff'],
      staff.map(({ id }) => id),
    ),
    ...people.flatMap((person, i) => {
      const at: Path = ['people', i];
      const needed = plannedMinutes(person);
      return [
        ...unknowns([...at, 'preferred'], person.preferred),
        ...unknowns([...at, 'excluded'], person.excluded),
        ...spans([...at, 'windows'], person.windows),
        ...spans([...at, 'meals'], person.meals),
        ...person.windows.flatMap(({ from, until }, w) =>
          until > from && until - from < needed
            ? [
                {
                  at: [...at, 'windows', w],
                  message: `is ${until - from} minutes long, and the visit takes ${needed}`,
                },
              ]
            : [],
        ),
      ];
    }),
    ...staff.flatMap((member, i) => [
      ...backwards(['staff', i, 'shift'], member.shift),
      ...spans(['staff', i, 'away'], member.away),
    ]),
    ...rules.apart.flatMap((two, i) => [
      ...unknowns(['rules', 'apart', i], two),
      ...(two[0] === two[1]
        ? [{ at: ['rules', 'apart', i], message: 'names the same member of staff twice' }]
        : []),
    ]),
    ...done.flatMap((visit, i) => [
      ...unknown(['done', i, 'swabber'], visit.swabber),
      ...unknown(['done', i, 'recorder'], visit.recorder),
      ...(visit.until < visit.from ? backwards(['done', i], visit) : []),
    ]),
    // Staff of an earlier plan may have gone home since: nobody has to know them.
    ...doubles(
      ['promised'],
      promised.map(({ person }) => person),
    ),
  ];
}
