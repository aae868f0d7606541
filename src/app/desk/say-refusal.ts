import { turnOf } from '../../care/custody/turn.ts';
import type { Home } from '../../care/home.ts';
import type { TurnId } from '../../care/ids.ts';
import type { Refusal } from '../../care/refusal.ts';
import type { Words } from '../words/en.ts';
import { namesIn } from './names.ts';

interface Telling {
  readonly words: Words;
  readonly home: Home;
}

/** A refusal in words for staff. Ends in a `never`: a new reason without words does not compile. */
export function sayRefusal(refusal: Refusal, { words, home }: Telling): string {
  const say = words.refusals;
  const names = namesIn(home, say.somebody);
  const ofTurn = (id: TurnId) => names.person(turnOf(home, id)?.person);
  switch (refusal.reason) {
    case 'needs-two':
      return say.needsTwo;
    case 'not-working-here':
      return say.notWorkingHere(names.staff(refusal.staff));
    case 'may-not-swab':
      return say.maySwab(names.staff(refusal.staff), refusal.until);
    case 'may-not-record':
      return say.mayRecord(names.staff(refusal.staff), refusal.until);
    case 'nobody-knows-them':
      return say.nobodyKnowsThem(names.person(refusal.person));
    case 'needs-senior':
      return say.needsSenior;
    case 'needs-manager':
      return say.needsManager;
    case 'last-manager':
      return say.lastManager;
    case 'wanted-and-not':
      return say.wantedAndNot(names.staff(refusal.staff));
    case 'not-theirs-to-say':
      return say.notTheirsToSay;
    case 'unknown-staff':
      return say.unknownStaff;
    case 'unknown-person':
      return say.unknownPerson;
    case 'consent-missing':
      return say.consentMissing(names.person(refusal.person));
    case 'consent-other-test':
      return say.consentOtherTest(names.person(refusal.person));
    case 'consent-ended':
      return say.consentEnded(names.person(refusal.person), refusal.on);
    case 'consent-not-yet':
      return say.consentNotYet(names.person(refusal.person), refusal.on);
    case 'consent-refused':
      return say.consentRefused(names.person(refusal.person));
    case 'consent-nobody':
      return say.consentNobody(names.person(refusal.person));
    case 'decision-review-due':
      return say.decisionReviewDue(names.person(refusal.person), refusal.on);
    case 'document-not-seen':
      return say.documentNotSeen(names.person(refusal.person));
    case 'plan-review-due':
      return say.planReviewDue(names.person(refusal.person), refusal.on);
    case 'plan-in-conflict':
      return say.planInConflict(names.person(refusal.person));
    case 'caution-unanswered':
      return say.cautionUnanswered(names.person(refusal.person), words.cautions[refusal.caution]);
    case 'caution-says-no':
      return say.cautionSaysNo(names.person(refusal.person), words.cautions[refusal.caution]);
    case 'photo-missing':
      return say.photoMissing(names.person(refusal.person));
    case 'birthday-missing':
      return say.birthdayMissing(names.person(refusal.person));
    case 'away':
      return say.away(names.person(refusal.person), refusal.since);
    case 'too-soon':
      return say.tooSoon(names.person(refusal.person), refusal.from);
    case 'enough-today':
      return say.enoughToday(names.person(refusal.person));
    case 'said-no':
      return say.saidNo(names.person(refusal.person), refusal.at);
    case 'already-tested':
      return say.alreadyTested(names.person(refusal.person));
    case 'turn-open':
      return say.turnOpen(names.person(refusal.person));
    case 'turn-ended':
      return say.turnEnded;
    case 'on-another-tablet':
      return say.onAnotherTablet;
    case 'not-this-step':
      return say.notThisStep;
    case 'too-late-to-go-back':
      return say.tooLateToGoBack;
    case 'tube-fate-unsaid':
      return say.tubeFateUnsaid;
    case 'second-side-missing':
      return say.secondSideMissing;
    case 'tablet-touched':
      return say.tabletTouched;
    case 'clock-wrong':
      return say.clockWrong;
    case 'no-room':
      return say.noRoom;
    case 'code-malformed':
      return say.codeMalformed;
    case 'code-check-failed':
      return say.codeCheckFailed;
    case 'code-used':
      return say.codeUsed(names.person(refusal.person), refusal.at);
    case 'code-closed':
      return say.codeClosed(names.person(refusal.person), refusal.at);
    case 'code-put-aside':
      return say.codePutAside;
    case 'code-differs-typed':
      return say.codeDiffersTyped(refusal.code);
    case 'code-near':
      return words.identity.codeNear(refusal.near.length);
    case 'code-elsewhere':
      return words.identity.codeElsewhere(refusal.homes);
    case 'second-person-same':
      return words.identity.secondPersonSame;
    case 'two-must-know':
      return words.identity.twoMustKnow(names.person(refusal.person));
    case 'identifier-malformed':
      return words.identity.identifierMalformed(refusal.name);
    case 'identifier-check-failed':
      return words.identity.identifierCheckFailed(refusal.name);
    case 'kit-expired':
      return say.kitExpired(refusal.on);
    case 'kit-recalled':
      return say.kitRecalled(refusal.lot);
    case 'kit-other-kind':
      return say.kitOtherKind;
    case 'no-kits':
      return say.noKits;
    case 'code-in-stock':
      return say.codeInStock(refusal.lot);
    case 'lot-ends-otherwise':
      return say.lotEndsOtherwise(refusal.lot, refusal.on);
    case 'delivery-unknown':
      return say.deliveryUnknown;
    case 'code-unknown':
      return say.codeUnknown(refusal.code);
    case 'not-sealed':
      return say.notSealed(names.person(refusal.person));
    case 'already-packed':
      return say.alreadyPacked(names.person(refusal.person));
    case 'held-by-finding':
      return say.heldByFinding;
    case 'other-round':
      return say.otherRound(names.person(refusal.person));
    case 'does-not-tally':
      return say.doesNotTally(refusal.missing.map(names.test), refusal.open.map(ofTurn));
    case 'box-empty':
      return say.boxEmpty;
    case 'box-not-closed':
      return say.boxNotClosed;
    case 'count-differs':
      return say.countDiffers(refusal.counted, refusal.packed);
    case 'round-closed':
      return say.roundClosed;
    case 'not-closed-yet':
      return say.notClosedYet;
    case 'reference-used':
      return say.referenceUsed(refusal.reference, names.test(refusal.test));
    case 'reference-is-code':
      return say.referenceIsCode(refusal.reference);
    case 'already-registered':
      return say.alreadyRegistered(refusal.reference);
    case 'not-packed':
      return say.notPacked(names.test(refusal.test));
    case 'second-identifier-differs':
      return say.secondIdentifierDiffers;
    case 'result-exists':
      return say.resultExists(words.outcomes[refusal.outcome], refusal.at);
    case 'result-held':
      return say.resultHeld;
    case 'result-superseded':
      return say.resultSuperseded;
    case 'finding-gone':
      return say.findingGone;
    case 'verdict-unfit':
      return say.verdictUnfit;
    case 'keeps-missing':
      return say.keepsMissing;
    case 'reason-missing':
      return say.reasonMissing;
    case 'policy-unreadable':
      return say.policyUnreadable(refusal.where, refusal.what);
    case 'policy-version-taken':
      return say.policyVersionTaken(refusal.policy, refusal.version);
    case 'in-the-future':
      return say.inTheFuture;
    case 'in-the-past':
      return say.inThePast;
    case 'not-a-day':
      return say.notADay(refusal.given);
    case 'ends-before-start':
      return say.endsBeforeStart;
    case 'not-a-count':
      return say.notACount;
    case 'nothing-changed':
      return say.nothingChanged;
    case 'no-rule-pack':
      return say.noRulePack;
    case 'decision-incomplete':
      return words.refusals.lacks[refusal.why];
    case 'decision-too-long':
      return say.decisionTooLong(refusal.days);
    case 'review-outside':
      return say.reviewOutside;
    case 'review-too-late':
      return say.reviewTooLate(refusal.days);
    case 'no-ladder':
      return say.noLadder;
    case 'practice-not-asked':
      return say.practiceNotAsked(names.person(refusal.person));
    case 'sharing-not-agreed':
      return say.sharingNotAgreed(names.person(refusal.person));
    case 'no-result-to-tell':
      return say.noResultToTell;
    case 'may-not-strike-out':
      return say.mayNotStrikeOut;
    case 'empty':
      return say.empty;
    case 'too-long':
      return say.tooLong(refusal.most);
    case 'nobody-chosen':
      return say.nobodyChosen;
    case 'left-off-unsaid':
      return say.leftOffUnsaid(names.person(refusal.person));
    case 'no-code-column':
      return say.noCodeColumn;
    default: {
      const unsaid: never = refusal;
      return unsaid;
    }
  }
}
