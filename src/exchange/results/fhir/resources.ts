import type { JsonAt } from './json-text.ts';

/** A part of JSON of which nothing is sure yet. */
export type Part = Readonly<Record<string, unknown>>;

export const isPart = (value: unknown): value is Part =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
export const part = (value: unknown): Part => (isPart(value) ? value : {});
export const parts = (value: unknown): readonly Part[] =>
  Array.isArray(value) ? value.filter(isPart) : [];
export const text = (value: unknown): string => (typeof value === 'string' ? value.trim() : '');

/** One resource with where it stands. `contained` ones belong to the resource around them. */
export interface Resource {
  readonly type: string;
  readonly value: Part;
  readonly pointer: string;
  readonly line: number | undefined;
  readonly within: Part | undefined;
}

export interface Resources {
  readonly all: readonly Resource[];
  /** What a reference leads to: by full URL, `Type/id`, or `#id` inside one resource. */
  readonly find: (reference: unknown, from: Resource) => Resource | undefined;
}

const MOST = 200_000;

/** Every resource of a document, a Bundle or NDJSON; undefined when there are too many. */
export function resourcesIn(values: readonly JsonAt[]): Resources | undefined {
  const all: Resource[] = [];
  const byUrl = new Map<string, Resource>();
  const add = (
    value: Part,
    at: Omit<Resource, 'type' | 'value' | 'within'>,
    fullUrl: string,
  ): void => {
    const resource: Resource = {
      ...at,
      value,
      type: text(value['resourceType']),
      within: undefined,
    };
    all.push(resource);
    if (fullUrl !== '') byUrl.set(fullUrl, resource);
    const id = text(value['id']);
    if (id !== '') byUrl.set(`${resource.type}/${id}`, resource);
  };
  const walk = (value: Part, pointer: string, line: number | undefined): void => {
    if (text(value['resourceType']) !== 'Bundle') {
      add(value, { pointer, line }, '');
      return;
    }
    for (const [i, entry] of parts(value['entry']).entries()) {
      const inside = entry['resource'];
      if (!isPart(inside)) continue;
      const at = `${pointer}/entry/${i}/resource`;
      if (text(inside['resourceType']) === 'Bundle') walk(inside, at, line);
      else add(inside, { pointer: at, line }, text(entry['fullUrl']));
    }
  };
  for (const { value, line } of values) {
    for (const [i, each] of (Array.isArray(value) ? value : [value]).entries()) {
      if (isPart(each)) walk(each, Array.isArray(value) ? `/${i}` : '', line);
    }
    if (all.length > MOST) return undefined;
  }
  return { all, find: (reference, from) => found(text(part(reference)['reference']), from, byUrl) };
}

function found(
  reference: string,
  from: Resource,
  byUrl: ReadonlyMap<string, Resource>,
): Resource | undefined {
  if (!reference.startsWith('#')) {
    const exact = byUrl.get(reference);
    if (exact !== undefined) return exact;
    // https://server/fhir/Patient/1/_history/2 leads to Patient/1.
    const relative = /([A-Z][A-Za-z]+\/[A-Za-z0-9.-]{1,64})(?:\/_history\/[^/]+)?$/.exec(reference);
    return relative?.[1] === undefined ? undefined : byUrl.get(relative[1]);
  }
  const around = from.within ?? from.value;
  const at = parts(around['contained']).findIndex(
    (each) => text(each['id']) === reference.slice(1),
  );
  const value = parts(around['contained'])[at];
  return (
    value && {
      ...{ value, type: text(value['resourceType']), within: around, line: from.line },
      pointer: `${from.pointer}/contained/${at}`,
    }
  );
}
