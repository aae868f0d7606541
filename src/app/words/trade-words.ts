/**
 * Words of the trade and of the tool that a worker knows, however many syllables they have. They count
 * as easy when a text is measured. Each is explained once where it first stands in the user guide.
 */
export const tradeWords: readonly string[] = [
  'consent',
  'register',
  'registered',
  'resident',
  'residents',
  'tenant',
  'tenants',
  'result',
  'courier',
  'laboratory',
  'Tallyround',
];
