/** Small enough to run in a page as well as in Node. */
export function same(actual: unknown, expected: unknown, what = 'value'): void {
  const [a, b] = [shown(actual), shown(expected)];
  if (a !== b) throw new Error(`${what}: got ${a}, not ${b}`);
}

export async function throws(work: () => Promise<unknown>, reason: string): Promise<void> {
  const error = await work().then(
    () => undefined,
    (thrown: unknown) => thrown as { readonly reason?: string; readonly message?: string },
  );
  if (error?.reason !== reason)
    throw new Error(`expected a refusal "${reason}", got ${error?.message ?? 'none'}`);
}

function shown(value: unknown): string {
  if (value === undefined) return 'undefined';
  return JSON.stringify(value, (_, part: unknown) => {
    if (part instanceof Map) return { map: [...part.entries()].sort() };
    if (part instanceof Set) return { set: [...part].sort() };
    if (part !== null && typeof part === 'object' && !Array.isArray(part))
      return Object.fromEntries(Object.entries(part).sort(([a], [b]) => (a < b ? -1 : 1)));
    return part;
  });
}
