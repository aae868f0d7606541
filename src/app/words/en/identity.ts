import type { LanguageTools } from '../language-tools.ts';

/** Near misses, namesakes, agreement of codes, and results that do not fit. */
export function identityWords({ plural, list }: LanguageTools) {
  return {
    codeNear: (others: number) =>
      plural(others, {
        one: 'Another kit has almost this code. Scan it, or ask a colleague to check with you.',
        other: 'Other kits have almost this code. Scan it, or ask a colleague to check with you.',
      }),
    codeElsewhere: (homes: readonly string[]) =>
      `This code was used in ${homes.length === 0 ? 'another home' : list(homes)}. Put the kit aside. Open another one.`,
    askingElsewhere: 'Asking the other homes about this code.',
    secondPersonSame: 'Somebody else must check it: a colleague who works here.',
    twoMustKnow: (person: string) =>
      `Two of you must know ${person} by sight. Ask a colleague to come.`,
    identifierMalformed: (name: string) =>
      `This does not look like a ${name}. Check each sign against the letter or card.`,
    identifierCheckFailed: (name: string) =>
      `One sign of the ${name} is wrong, or two have changed places. Read it again.`,
    /** Beside a button: this colleague has read the label too and agrees. */
    secondReads: (colleague: string) => `${colleague} has read it too, and it is right`,
    whoReads: 'Who has read the label too?',
    nearTitle: 'Codes that look alike',
    nearNote: 'These kits differ by one sign. Keep them apart, and scan them, do not type.',
    nearPair: (first: string, second: string) => `${first} and ${second}`,
    bedside: {
      sameName: 'Someone of nearly the same name lives here. Look at the face.',
    },
    box: {
      title: 'Scan the box',
      note: 'One scan of the box fills in the lot and the last day.',
      read: 'Read from the box. Check it against the print.',
      noKind: 'The policy does not know this product. Pick the kind of kit yourself.',
      faults: {
        empty: 'Nothing was read. Scan again.',
        'too-long': 'That was more than one scan. Scan one code.',
        'not-gs1': 'This code does not say what is in the box. Look for another one.',
        'control-character': 'The scan came in wrong. Scan again.',
        'unknown-identifier': 'Part of this code makes no sense. Scan again.',
        'cut-short': 'Only half of the code was read. Scan again.',
        'value-too-long': 'Part of this code is too long. Scan again.',
        'wrong-characters': 'A sign in this code cannot be right. Scan again.',
        'check-digit': 'The product number is wrong by a sign. Scan again.',
        'read-twice': 'Two codes came in as one. Scan one code.',
        'no-product': 'This code names no product. Look for another one on the box.',
        'not-a-day': 'The date in this code is no real day. Type what is printed.',
      },
    },
    readings: {
      title: 'Where the code was read',
      places: { record: 'Spare label', tube: 'Tube', bag: 'Bag', box: 'Into the box' },
      how: { scanned: 'scanned', 'typed-twice': 'typed twice' },
      columns: { place: 'Where', code: 'Code', how: 'How', who: 'Who' },
      both: (who: string, second: readonly string[]) => `${who}, and ${list(second)} read it too`,
      agrees: {
        yes: 'Tube, bag and record agree.',
        no: 'They differ. A senior must settle it.',
        'not-yet': 'Not all of them have been read yet.',
      },
    },
    knowsToo: 'Who else here knows them by sight?',
  };
}
