/** Symbols a label may carry, said aloud. */
const said: Readonly<Record<string, string>> = {
  '-': 'dash',
  '.': 'dot',
  '/': 'slash',
  '+': 'plus',
  ' ': 'space',
};

export function scanWords() {
  return {
    ready: 'Ready to scan',
    readyNote: 'Point the scanner and press its trigger. You need not touch the screen.',
    camera: 'Use the camera',
    typeInstead: 'Type it instead',
    backToScan: 'Back to scanning',
    typeFirst: 'Type the code from the label',
    typeAgain: 'Type it again from the label',
    typeAgainNote: 'Your first try is hidden, so that each one checks the other.',
    next: 'Next',
    check: 'Check the two',
    tooShort: (least: number) => `The code is too short. A code has ${least} signs or more.`,
    differAt: (place: number) =>
      `The two differ at sign ${place}. Look at the label. Type both again.`,
    differInLength: 'One has more signs than the other. Look at the label. Type both again.',
    unfinished: 'A scan came without an end. Scan again, or set the scanner to send Enter.',
    read: (spelled: string) => `Read: ${spelled}`,
    /** A code for the ear: one sign at a time. */
    spell: (code: string) => Array.from(code, (sign) => said[sign] ?? sign).join(', '),
  };
}
