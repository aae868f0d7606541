import type { Refusal } from '../../../care/refusal.ts';

/** Who can put right what keeps somebody from being swabbed. */
export function whomToSee(hold: Refusal): 'senior' | 'doctor' | 'records' | 'wait' {
  switch (hold.reason) {
    case 'caution-unanswered':
    case 'caution-says-no':
      return 'doctor';
    case 'photo-missing':
    case 'birthday-missing':
      return 'records';
    case 'away':
      return 'wait';
    default:
      return 'senior';
  }
}
