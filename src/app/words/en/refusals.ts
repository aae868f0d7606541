import type { Lack } from '../../../care/consent/path.ts';
import type { LanguageTools } from '../language-tools.ts';

/** Why something may not be done, and what to do instead. One for each reason, tested both ways. */
export function refusalWords({ dates, list }: LanguageTools) {
  const time = dates.time;
  const day = dates.date;
  const lacks: Record<Lack['why'], string> = {
    unanswered: 'This has to be answered on this path.',
    'not-told': 'They have to be told all five first.',
    'limb-unanswered': 'Say whether they can or cannot.',
    'document-unsaid': 'Say whether you saw the paper.',
    'does-not-follow': 'That does not fit what you wrote about the four abilities.',
  };
  return {
    somebody: 'somebody',
    lacks,
    needsTwo: 'A swab needs two people: one swabs, one records. Pick another colleague.',
    notWorkingHere: (staff: string) => `${staff} does not work here now. Pick another colleague.`,
    maySwab: (staff: string, until: string | undefined) =>
      until === undefined
        ? `${staff} has not been trained to swab. ${staff} may record.`
        : `${staff}'s swab training ended on ${day(until)}. ${staff} may record, not swab.`,
    mayRecord: (staff: string, until: string | undefined) =>
      until === undefined
        ? `${staff} has not been trained to record. Pick another colleague.`
        : `${staff} may not record. The training ended on ${day(until)}. Pick somebody else.`,
    nobodyKnowsThem: (person: string) =>
      `Neither of you knows ${person} by sight. Fetch somebody who knows ${person}.`,
    needsSenior: 'Only a senior can do this. Fetch a senior.',
    needsManager: 'Only a manager can do this. Ask the manager.',
    wantedAndNot: (who: string) => `${who} is ticked both ways. Pick one.`,
    notTheirsToSay: 'It is for somebody else to say this.',
    lastManager: 'There is no other manager. Name another one first.',
    unknownStaff: 'This colleague is not on the list. Add them first.',
    unknownPerson: 'This person or round is not on this tablet yet. Go back to Now.',
    consentMissing: (person: string) =>
      `Nobody has written down who decides for ${person}. Do that first.`,
    consentOtherTest: (person: string) =>
      `${person}'s decision is for another test. Ask for one for this test.`,
    consentEnded: (person: string, on: string) =>
      `${person}'s decision ended on ${day(on)}. Ask for a review first.`,
    consentNotYet: (person: string, on: string) => `${person}'s decision starts on ${day(on)}.`,
    consentRefused: (person: string) => `${person} has said no to this test. Do not ask again.`,
    consentNobody: (person: string) => `Nobody may decide for ${person} yet. Ask the manager.`,
    decisionReviewDue: (person: string, on: string) =>
      `${person}'s decision was to be looked at again by ${day(on)}. Do that first.`,
    documentNotSeen: (person: string) =>
      `Nobody has seen the paper that lets somebody decide for ${person}. Ask for it.`,
    planReviewDue: (person: string, on: string) =>
      `${person}'s plan was to be read again by ${day(on)}. Do that first.`,
    planInConflict: (person: string) =>
      `Two colleagues wrote ${person}'s plan in two ways. Settle that first.`,
    noRulePack: 'The rules in force name no law for decisions. Ask the manager.',
    decisionTooLong: (days: number) => `The rules let a decision hold for ${days} days at most.`,
    reviewOutside: 'Look at it again while it holds: after it starts, before it ends.',
    reviewTooLate: (days: number) => `The rules ask for a review within ${days} days.`,
    noLadder: 'The rules in force have no steps of practice. Ask the manager.',
    practiceNotAsked: (person: string) => `${person}'s plan asks for no practice.`,
    sharingNotAgreed: (person: string) =>
      `Nobody has agreed that ${person}'s results are told to them. Ask first.`,
    noResultToTell: 'There is no result that stands. So there is no letter.',
    cautionUnanswered: (person: string, caution: string) =>
      `${person}: ${caution}. Ask a clinician before any swab.`,
    cautionSaysNo: (person: string, caution: string) =>
      `${person}: ${caution}. A clinician said not to swab.`,
    photoMissing: (person: string) =>
      `${person} has no photo. Add one, so that you can check who this is.`,
    birthdayMissing: (person: string) =>
      `${person} has no birth date here. Add it, so that you can check who this is.`,
    away: (person: string, since: string) => `${person} is away since ${day(since)}.`,
    tooSoon: (person: string, from: string) => `Give ${person} time. Ask again from ${time(from)}.`,
    enoughToday: (person: string) => `Enough for ${person} today. Ask another day.`,
    saidNo: (person: string, at: string) =>
      `${person} said no at ${time(at)}. Ask again only if ${person} comes to you.`,
    alreadyTested: (person: string) => `${person} has a tube in this round already.`,
    turnOpen: (person: string) => `${person}'s turn is open. Finish it or hand it over.`,
    turnEnded: 'This turn has ended.',
    onAnotherTablet: 'This turn is on another tablet. Take it over here first.',
    notThisStep: 'That is not the next step. Look at the screen and go on from there.',
    tooLateToGoBack: 'It is too late to go back. Stop, or go on.',
    tubeFateUnsaid: 'Say first what became of the open kit.',
    secondSideMissing: "The second side wasn't done. Do it, or say why.",
    tabletTouched: 'This tablet was touched with used gloves. Wipe it first.',
    clockWrong: 'The clock of this tablet is wrong. Put it right first.',
    noRoom: 'This tablet is full. Send what waits before a new turn.',
    codeMalformed: 'That is not the code of a kit. Scan the label with the bars again.',
    codeCheckFailed: 'One sign of that code is wrong. Scan the label, or type it again.',
    codeUsed: (person: string, at: string) =>
      `This barcode is on ${person}'s test from ${time(at)}. Stop. Put this kit aside and open another.`,
    codeClosed: (person: string, at: string) =>
      `This barcode was closed for ${person} on ${dates.dayTime(at)}. It can't be used again. Open another kit.`,
    codePutAside: 'This kit was put aside before. Open another one.',
    codeDiffersTyped: (code: string) =>
      `You typed ${code}. That is not this kit's code. Look again, or scan. If the label differs, put the kit aside.`,
    kitExpired: (on: string) => `This kit ended on ${day(on)}. Put it aside and take another.`,
    kitRecalled: (lot: string) => `Lot ${lot} was recalled. Put this kit aside and take another.`,
    kitOtherKind: 'This kind of kit is not in the policy. Ask the manager.',
    noKits: 'There are no kits in date. Tell a senior.',
    codeInStock: (lot: string) => `This one is in lot ${lot} already. Put it with the others.`,
    lotEndsOtherwise: (lot: string, on: string) =>
      `Another box of lot ${lot} ends on ${day(on)}. Read the label again. If the other is wrong, put that right first.`,
    deliveryUnknown: 'This delivery is not on this tablet yet. Go back to Kits.',
    codeUnknown: (code: string) =>
      `No test here has the code ${code}. Put the bag aside and tell a senior.`,
    notSealed: (person: string) => `${person}'s tube is not sealed yet. Finish the turn first.`,
    alreadyPacked: (person: string) => `${person}'s bag is in the box already.`,
    heldByFinding: 'Something about this tube does not fit. A senior must settle it first.',
    otherRound: (person: string) => `${person}'s tube belongs to another round. Pack it there.`,
    doesNotTally: (missing: readonly string[], open: readonly string[]) =>
      [
        ...(missing.length > 0 ? [`Missing: ${list(missing)}. Find the bag and scan it.`] : []),
        ...(open.length > 0 ? [`Still open: ${list(open)}. Finish the turn.`] : []),
      ].join(' '),
    boxEmpty: 'The box is empty. Scan the bags into it first.',
    boxNotClosed: 'Close the box first.',
    countDiffers: (counted: number, packed: number) =>
      `You counted ${counted}. The box holds ${packed}. Count again together.`,
    roundClosed: 'This round is closed. Start another.',
    notClosedYet: 'This round is not closed yet.',
    referenceUsed: (reference: string, person: string) =>
      `The reference ${reference} belongs to ${person}'s test. Look at the site again.`,
    referenceIsCode: (reference: string) =>
      `${reference} is the code of a kit here. Look for the reference on the site.`,
    alreadyRegistered: (reference: string) => `This test is registered as ${reference} already.`,
    notPacked: (person: string) => `${person}'s tube is not packed. Pack it first.`,
    secondIdentifierDiffers:
      'The second detail does not match the person this code belongs to. Stop. Check the code and the person.',
    resultExists: (outcome: string, at: string) =>
      `This test already has a result: ${outcome}, from ${dates.dayTime(at)}. Is this a correction?`,
    resultHeld: 'This result is held. Only a senior may put it right.',
    resultSuperseded: 'The result has changed since. Look at it again.',
    findingGone: 'Something has changed here since you opened it. Read it again.',
    verdictUnfit: 'That cannot be said of this. Pick another answer.',
    keepsMissing: 'Pick which one stands.',
    reasonMissing: 'Write why. Others will read it.',
    policyUnreadable: (where: string, what: string) =>
      `This file is not a policy. Look at ${where}: ${what}`,
    policyVersionTaken: (policy: string, version: number) =>
      `${policy} has a version ${version} already. Give the new one a higher number.`,
    inTheFuture: 'That day has not come yet. Check the date.',
    inThePast: 'That time is over. Pick a later one.',
    notADay: (given: string) => `"${given}" is not a date. Write the day, month and year.`,
    endsBeforeStart: 'The end is before the start. Check both dates.',
    notACount: 'Write a whole number here, 0 or more.',
    nothingChanged: 'Nothing has changed, so nothing was kept.',
    mayNotStrikeOut: 'This entry cannot be struck out. Amend it, or ask a senior to settle it.',
    empty: 'Fill this in.',
    tooLong: (most: number) => `That is too long. Use ${most} signs or fewer.`,
    nobodyChosen: 'Pick at least one person.',
    leftOffUnsaid: (person: string) => `${person} is due. Say why ${person} is left off.`,
    noCodeColumn: "One column must hold the kit's code. Add it.",
    trouble: {
      'no-room': 'This tablet is full. Nothing was lost. Send what waits, then try again.',
      clock: 'Check the clock of this tablet first. Nothing was kept yet.',
      storage: 'This tablet could not keep that. Try again. If it happens twice, tell a senior.',
      moved: 'Something changed at the same moment. Look again.',
    },
  };
}
