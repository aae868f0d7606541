/** Both ends included; lower <= upper. */
export interface Interval {
  readonly lower: number;
  readonly upper: number;
}
