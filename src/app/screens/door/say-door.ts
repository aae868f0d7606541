import type { EnrolledHere, SignedInHere } from '../../tablet/tablet.ts';
import type { Words } from '../../words/en.ts';

type No<T> = Exclude<T, { readonly ok: true }>;

/** Why somebody was not let in, and what to do. Which of name and PIN was wrong is never said. */
export function saySignIn(refusal: No<SignedInHere>, { door }: Words): string {
  switch (refusal.reason) {
    case 'wrong':
      return door.wrong;
    case 'wait':
      return door.wait(refusal.waitMs);
    case 'pin-must-change':
      return door.mustChange;
    case 'pin-refused':
      return door.pinRefused[refusal.fault];
    case 'needs-contact':
      return door.noContact;
    case 'lease-over':
      return door.leaseOver;
    case 'not-enrolled':
      return door.problems['device-unknown'];
    case 'server':
      return door.refused;
    case 'storage':
      return refusal.what === 'newer' ? door.problems['program-old'] : door.problems.damaged;
  }
}

export function sayEnrol(refusal: No<EnrolledHere>, words: Words): string {
  const { enrol } = words.door;
  switch (refusal.reason) {
    case 'needs-manager':
      return enrol.needsManager;
    case 'no-contact':
      return enrol.noContact;
    case 'tablet-key-gone':
      return enrol.keyGone;
    case 'refused':
      return words.door.refused;
    default:
      return saySignIn(refusal, words);
  }
}
