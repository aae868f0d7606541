export type { World } from '../service/open.ts';
/** A fault of folder, file or disk in plain words; undefined for anything else. */
export { startWords as faultWords } from '../start/faults.ts';
