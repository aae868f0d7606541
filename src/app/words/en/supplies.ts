import type { DataOf } from '../../../care/catalogue.ts';
import type { PpeItem } from '../../../care/supplies/facts.ts';
import type { LanguageTools } from '../language-tools.ts';

/** Kits and protective equipment: what is on the shelf, what came, what was found unfit. */
export function suppliesWords({ dates, plural }: LanguageTools) {
  const kits = (count: number) => plural(count, { one: '1 kit', other: `${count} kits` });
  const reasons: Record<DataOf<'kit.put-aside'>['why'], string> = {
    damaged: 'Damaged',
    expired: 'Past its end',
    recalled: 'Called back by the maker',
    incomplete: 'A part is missing',
    'labels-differ': 'Its labels differ',
    other: 'Something else',
  };
  const items: Record<PpeItem, string> = {
    gloves: 'Gloves, pairs',
    aprons: 'Aprons',
    masks: 'Masks',
    'eye-protection': 'Eye protection',
  };
  return {
    title: 'Kits',
    reasons,
    items,
    kits,
    usable: (count: number) =>
      plural(count, { one: '1 kit may be used today.', other: `${count} kits may be used today.` }),
    deliver: 'A delivery came',
    aside: 'Put a kit aside',
    lots: 'Lots, soonest end first',
    lot: 'Lot',
    left: 'On the shelf',
    ends: 'Ends',
    state: {
      ended: 'ended: put aside',
      soon: 'ends soon: use first',
      recalled: 'called back: put aside',
      usedUp: 'used up',
      inDate: 'in date',
    },
    stateHead: 'How it stands',
    none: 'No kits of this kind yet',
    noneWhy: 'Write down a delivery when one comes.',
    usedUp: (count: number) =>
      plural(count, { one: '1 lot used up', other: `${count} lots used up` }),
    unknownLot: (count: number) =>
      plural(count, {
        one: '1 kit is gone that no delivery holds.',
        other: `${count} kits are gone that no delivery holds.`,
      }),
    unknownLotWhy: 'Count the shelf, so that the numbers are right again.',
    deliveries: 'Deliveries',
    delivery: (day: string, lot: string, count: number) =>
      `${dates.shortDate(day)}: lot ${lot}, ${kits(count)}.`,
    scanned: (done: number, of: number) => `${done} of ${of} scanned.`,
    goOnScanning: 'Go on scanning',
    goOnScanningLot: (lot: string) => `Go on scanning: lot ${lot}`,
    amendBox: 'Put the box right',
    amendBoxLot: (lot: string) => `Put the box right: lot ${lot}`,
    form: {
      title: 'A delivery came',
      lead: 'Read it off the box. The kits are scanned next.',
      editTitle: 'Put the box right',
      editLead: 'What you change here holds for every kit of this box.',
      kind: 'Which kind of kit?',
      lot: 'Lot',
      lotHint: 'As printed, signs and all.',
      expires: 'Ends on',
      expiresHint: 'The last day it may be used. Where only a month stands, its last day.',
      count: 'How many kits?',
      next: 'Keep, then scan the kits',
    },
    unpack: {
      title: (lot: string) => `Scan the kits of lot ${lot}`,
      lead: 'One after another, as they come out of the box.',
      done: (done: number, of: number) => `${done} of ${of}`,
      last: 'The last one:',
      takeOut: 'Take the last one out again',
      fewer: (count: number) =>
        plural(count, {
          one: '1 fewer than the box says.',
          other: `${count} fewer than the box says.`,
        }),
      fewerWhy: 'Look in the box again. If they are not there, put the number right.',
      more: (count: number) =>
        plural(count, {
          one: '1 more than the box says.',
          other: `${count} more than the box says.`,
        }),
      moreWhy: 'Is one from another box? If not, put the number right.',
      all: 'All are scanned.',
      finish: 'Done',
      list: (count: number) =>
        plural(count, { one: 'The 1 code scanned', other: `All ${count} codes scanned` }),
      out: 'Take out',
      outCode: (code: string) => `Take out: ${code}`,
      picture: (done: number, of: number) => `${done} of ${of} beads are filled.`,
      unknown: 'This delivery is not on this tablet yet.',
    },
    lotPage: {
      title: (lot: string) => `Lot ${lot}`,
      kind: 'Kind',
      opened: 'Opened so far',
      known: 'Scanned when unpacked',
      ended: (on: string) => `It ended on ${dates.date(on)}. Put every kit of it aside.`,
      soon: (on: string) => `It ends on ${dates.date(on)}. The next round takes it first.`,
      recalled: 'This lot was called back. Put every kit of it aside.',
      recalledAsk: 'Ask the laboratory about swabs done with it.',
      count: 'Count the shelf',
      recall: 'Call this lot back',
      history: 'How do we know?',
      unknown: 'No such lot is on this tablet.',
    },
    countForm: {
      title: (lot: string) => `Count lot ${lot}`,
      lead: (left: number) => `By what was written down there are ${left}.`,
      count: 'How many are on the shelf?',
    },
    recallForm: {
      title: (lot: string) => `Call lot ${lot} back`,
      lead: 'From now on no kit of it can be opened.',
      reason: 'Who says so, and why?',
      press: 'Call it back',
    },
    asideForm: {
      title: 'Put a kit aside',
      lead: 'It looked wrong before you opened it. It is never used.',
      kind: 'Which kind of kit?',
      code: 'Scan its spare label',
      codeHint: 'If no label can be read, pick the lot below.',
      scanned: 'This kit:',
      again: 'Scan another instead',
      lot: 'Which lot?',
      noLot: 'Not known',
      why: 'What is wrong with it?',
      press: 'Put it aside',
    },
    ppe: {
      title: 'Gloves, aprons, masks',
      shelf: 'What is on the shelf',
      item: 'What',
      left: 'About how many',
      counted: 'Counted on',
      takes: 'A round of 12 takes',
      lasts: 'Lasts for',
      rounds: (count: number) => plural(count, { one: '1 round', other: `${count} rounds` }),
      never: 'not counted yet',
      count: 'Count them',
      short: 'too few for a round',
      formTitle: 'Count gloves, aprons, masks',
      formLead: 'Fill in what you counted. The rest stays as it is.',
      by: (day: string) => dates.dayMonth(day),
    },
    history: {
      delivered: 'Delivered',
      unpacked: 'Scanned when unpacked',
      counted: 'Shelf counted',
      recalled: 'Called back',
      aside: 'Put aside',
      opened: 'Opened for a person',
      box: (count: number, ends: string) => `${kits(count)}, ends ${dates.date(ends)}`,
    },
  };
}
