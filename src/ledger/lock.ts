/** Lets one piece of work in at a time, in the order they came. */
export type Lock = <T>(work: () => Promise<T>) => Promise<T>;

/**
 * One for each store on the server: two pushes that both read the head before either has written
 * would otherwise compute the same position, and one would only have to start again.
 */
export function createLock(): Lock {
  let last: Promise<unknown> = Promise.resolve();
  return (work) => {
    const next = last.then(work, work);
    last = next.catch(() => undefined);
    return next;
  };
}
