import type { SpoilReason, StopReason } from '../../care/custody/facts.ts';
import type { PersonId, RoundId, StaffId, TurnId } from '../../care/ids.ts';
import type { ReadCode } from '../second-person.ts';

/** Everything the recorder can tap, scan or choose at the bedside. */
export type Touch =
  | {
      readonly do: 'start';
      readonly round: RoundId;
      readonly person: PersonId;
      readonly swabber: StaffId;
      readonly recorder: StaffId;
      /** They said no earlier and have come back to ask for it. */
      readonly changedMind?: boolean;
    }
  | {
      readonly do: 'identify';
      readonly chosen: PersonId | 'none';
      /** A colleague outside the pair who knows the person by sight and is in the room. */
      readonly also?: StaffId;
    }
  | { readonly do: 'willing'; readonly answer: 'yes' | 'no' | 'unsure' | 'asleep' | 'away' }
  | ({ readonly do: 'open-kit' } & ReadCode)
  | { readonly do: 'contents-right'; readonly quick?: true }
  | ({ readonly do: 'read-label' } & ReadCode)
  | { readonly do: 'choose-way'; readonly sites?: 'nose-only'; readonly self?: true }
  | { readonly do: 'start-site' }
  | { readonly do: 'next-site'; readonly ms: number }
  | {
      readonly do: 'out';
      readonly ms: number;
      /** Why a side was left out, where one was. */
      readonly short?: 'asked-to-finish' | 'sore' | 'blocked' | 'other';
    }
  | { readonly do: 'lid-dry'; readonly quick?: true }
  | { readonly do: 'sealed'; readonly quick?: true }
  | { readonly do: 'kit-fault'; readonly why: SpoilReason }
  | { readonly do: 'stop' }
  | { readonly do: 'stop-mistaken' }
  | { readonly do: 'explain-stop'; readonly why: StopReason }
  | {
      readonly do: 'interrupt';
      readonly why: 'alarm' | 'called-away' | 'emergency' | 'visitor' | 'other';
    }
  | {
      readonly do: 'resume';
      readonly tube: 'none-open' | 'lid-was-on' | 'kept-safe' | 'left-open';
      /** Another pair, or the same. */
      readonly swabber: StaffId;
      readonly recorder: StaffId;
    }
  | { readonly do: 'finish'; readonly mood?: 'calm' | 'uneasy' | 'distressed' };

/** Everything but the start happens within a turn. */
export type TurnTouch = Exclude<Touch, { do: 'start' }> & { readonly turn: TurnId };
