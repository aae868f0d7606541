import type { Turn } from '../custody/turn.ts';
import type { PersonId, StaffId } from '../ids.ts';
import type { PracticeDue } from '../practice/due.ts';
import type { Finding, Standing } from '../quality/finding.ts';
import type { Refusal } from '../refusal.ts';
import type { Action } from '../results/actions.ts';
import type { Registration } from '../results/outcome.ts';
import type { InTray } from '../results/tray.ts';
import type { Waiting } from '../results/waiting.ts';
import type { DueLine } from '../rounds/due.ts';
import type { Swab } from '../rounds/history.ts';
import type { Round } from '../rounds/round.ts';
import type { Tally } from '../rounds/tally.ts';
import type { Lot } from '../supplies/stock.ts';
import type { Instant } from '../time.ts';

/** Something that needs somebody, with what a screen needs to say who, what and by when. */
export type Work =
  | {
      readonly work: 'act';
      readonly action: Action;
      readonly person: PersonId;
      readonly late: boolean;
      readonly who: StaffId | undefined;
    }
  | { readonly work: 'settle'; readonly finding: Finding; readonly standing: Standing }
  | { readonly work: 'tray'; readonly waiting: readonly InTray[] }
  | { readonly work: 'turn-open'; readonly turn: Turn }
  | { readonly work: 'round'; readonly round: Round; readonly tally: Tally }
  | {
      readonly work: 'not-collected';
      readonly round: Round;
      readonly courierDue: Instant;
      readonly missed: boolean;
      /** When the oldest tube has waited as long as its kit allows. */
      readonly keepsUntil: Instant;
    }
  | {
      readonly work: 'register';
      readonly swab: Swab;
      readonly registration: Registration;
      readonly late: boolean;
    }
  | { readonly work: 'chase'; readonly waiting: Waiting }
  | { readonly work: 'held'; readonly line: DueLine; readonly holds: readonly Refusal[] }
  | { readonly work: 'due'; readonly line: DueLine }
  | { readonly work: 'practice'; readonly due: PracticeDue }
  | { readonly work: 'kits-expire'; readonly lot: Lot }
  | { readonly work: 'confirm-policy' };

export type WorkKind = Work['work'];
