import type { DateForm, Encoding, Separator, UploadPart } from '../../../care/results/facts.ts';
import type { LanguageTools } from '../language-tools.ts';

export function uploadingWords({ plural, list }: LanguageTools) {
  const holds: Record<UploadPart, string> = {
    code: 'Kit code',
    name: 'Full name',
    'first-names': 'First names',
    'last-name': 'Last name',
    born: 'Birth date',
    identifier: 'Their number',
    'swab-day': 'Day of the swab',
    'swab-time': 'Time of the swab',
    sites: 'Where the swab was taken',
    fixed: 'The same text on every line',
  };
  const dates: Record<DateForm, string> = {
    'yyyy-mm-dd': '2026-11-26',
    'dd/mm/yyyy': '26/11/2026',
    'dd.mm.yyyy': '26.11.2026',
    'mm/dd/yyyy': '11/26/2026',
  };
  const encodings: Record<Encoding, { label: string; hint: string }> = {
    'utf-8': { label: 'UTF-8', hint: 'The usual one.' },
    'utf-8-bom': { label: 'UTF-8 with a mark', hint: 'If you open it in a spreadsheet first.' },
    'windows-1252': { label: 'Windows-1252', hint: 'Only if they ask for it. Not all names fit.' },
  };
  const separators: Record<Separator, string> = {
    comma: 'Comma',
    semicolon: 'Semicolon',
    tab: 'Tab',
  };
  return {
    holds,
    dates,
    encodings,
    separators,
    title: 'Upload file',
    lead: (registrar: string) =>
      `A file that ${registrar} can read. Then their references come back.`,
    notSet: 'Nobody has said yet what their file looks like.',
    notSetHow: 'A senior sets it once, from their instructions.',
    set: 'Set the file',
    change: 'Change how the file looks',
    preview: (count: number) =>
      plural(count, { one: 'The file: 1 line', other: `The file: ${count} lines` }),
    allIn: 'Every test of this round is registered already.',
    empty: (columns: readonly string[]) =>
      `Some cells are empty: ${list(columns)}. Look before you send it.`,
    noFit: (signs: readonly string[]) =>
      `These signs do not fit the encoding: ${signs.join(' ')}. Pick UTF-8, or register those by hand.`,
    save: 'Save the file',
    saved: (name: string) => `Saved as ${name}. Delete it once it is sent: it holds names.`,
    fileName: (day: string) => `tests-${day}.csv`,
    then: 'What came back',
    thenLead: 'Paste their list: on each line a kit code and its reference.',
    paste: 'Their list',
    check: 'Check the list',
    lines: (good: number, bad: number) =>
      `${plural(good, { one: '1 line is good', other: `${good} lines are good` })}, ${bad} not.`,
    columns: {
      line: 'Line',
      person: 'Person',
      reference: 'Reference',
      said: 'What it says',
      wrong: 'What is wrong',
    },
    goodTitle: 'Good lines',
    badTitle: 'Lines that are left',
    notAPair: 'Not a code and a reference.',
    twice: 'Two lines say this differently. Neither is kept.',
    keepGood: (count: number) =>
      plural(count, { one: 'Keep the good line', other: `Keep the ${count} good lines` }),
    kept: (count: number) =>
      plural(count, { one: '1 test is registered.', other: `${count} tests are registered.` }),

    setTitle: 'How their file looks',
    setLead: 'Look at their instructions. Put the columns in their order, with their titles.',
    column: (at: number) => `Column ${at}`,
    what: 'What is in it?',
    columnTitle: 'Its title in the first line',
    text: 'Which text?',
    lastNameHint: 'The last word of the name. Look at each line.',
    add: 'Add a column',
    remove: (at: number) => `Take out column ${at}`,
    up: (at: number) => `Move column ${at} up`,
    down: (at: number) => `Move column ${at} down`,
    removeShort: 'Take out',
    dateForm: 'How do they write a day?',
    encoding: 'Encoding',
    separator: 'Between the cells',
    seniorOnly: 'A senior or the manager sets this.',
    wrongTitle: (at: number) => `Column ${at} needs a title.`,
    wrongText: (at: number) => `Column ${at} needs its text.`,
  };
}
