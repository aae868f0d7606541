/** Why nothing was done, in plain words: what, where, and what to do. */
export class UpkeepFault extends Error {
  override readonly name = 'UpkeepFault';
}
