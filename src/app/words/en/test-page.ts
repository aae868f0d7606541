import type { Link, LinkName } from '../../../care/rounds/proof.ts';
import type { LanguageTools } from '../language-tools.ts';

/** The page of one test, and the sheet that an inspector is given of it. */
export function testPageWords({ dates, plural }: LanguageTools) {
  const links: Record<LinkName, Record<Link['holds'], string>> = {
    person: {
      yes: 'We knew who it was.',
      no: 'Somebody else was picked.',
      'not-yet': 'Nobody has said who it is yet.',
      over: 'Nobody has said who it was.',
    },
    kit: {
      yes: 'This kit was opened in this turn, for nobody else.',
      no: 'This kit is in doubt.',
      'not-yet': 'No kit is open yet.',
      over: 'This kit was closed for ever. Its tube is not used.',
    },
    labels: {
      yes: 'Tube, bag and record have one code.',
      no: 'The codes differ.',
      'not-yet': 'Not all the labels have been read yet.',
      over: 'The labels do not count any more.',
    },
    reference: {
      yes: 'The test was registered under this code.',
      no: 'The test could not be registered.',
      'not-yet': 'The test is not registered yet.',
      over: 'The test is not to be registered.',
    },
    result: {
      yes: 'The result came for this code, and a second detail matched.',
      no: 'The result is in doubt.',
      'not-yet': 'There is no result yet.',
      over: 'There is no result to use.',
    },
    doubts: {
      yes: 'Nothing on record speaks against it.',
      no: 'Something does not fit. A senior has to settle it.',
      'not-yet': 'Not looked at yet.',
      over: 'Nothing more to look at.',
    },
  };
  return {
    title: (name: string, day: string) => `${name}, swab of ${dates.date(day)}`,
    turnTitle: (name: string, day: string) => `${name}, ${dates.date(day)}: no swab`,
    none: 'There is no such test on this tablet.',
    whose: (name: string, test: string) => `${name}. ${test}.`,
    why: (rule: string) => `Why a swab: ${rule}.`,
    whyUnlisted: 'Why a swab: not on the list of the round.',
    policy: (policy: string, version: number) => `Policy ${policy}, version ${version}`,
    policyBy: (who: string, at: string) => `confirmed by ${who}, ${dates.moment(at)}.`,
    policyNobody: 'which nobody had confirmed yet.',
    invented: 'It is an invented one, for trying things out.',
    known: 'How do we know it is theirs?',
    links,
    allHold: 'All six hold: this result is theirs.',
    allHoldSoFar: 'All that has happened so far holds.',
    notAllHold: 'Not all of it holds. Look at what is marked.',
    settledAll: (count: number) =>
      plural(count, {
        one: '1 thing did not fit and was settled. See below.',
        other: `${count} things did not fit and were settled. See below.`,
      }),
    readings: 'One code, read in each place',
    story: 'All that happened',
    nothingYet: 'Nothing yet.',
    onTablet: (tablet: string) => `On ${tablet}.`,
    reached: (at: string) => `Reached the server ${dates.dayTime(at)}.`,
    fromPaper: (who: string, at: string) =>
      `Written on paper by ${who}. Typed in ${dates.dayTime(at)}.`,
    carriedBy: (tablet: string) => `Brought in by ${tablet}.`,
    waits: 'Not at the server yet.',
    how: (how: string) => `Code ${how}.`,
    secondRead: (who: string) => `${who} read it too: another code looks like it.`,
    actions: 'What the result asks for',
    act: 'Open what is to be done',
    doubts: 'What did not fit',
    signedAt: (who: string, at: string) => `${who}, ${dates.dayTime(at)}.`,
    openFinding: 'Look at it',
    openFindingWhat: (what: string) => `Look at it: ${what}`,
    toPerson: (name: string) => `${name}'s page`,
    toRound: 'The round',
    sheet: 'Sheet for an inspector',
    spoiled: 'This kit was closed for ever.',
    spoiledWhy: (why: string) => `Why: ${why}. Its tube is not sent and its code not used again.`,
    withdrawn: 'This test was taken out.',
    withdrawnHow: 'A senior settled that it does not stand. Nobody acts on it.',
    held: 'This test is held.',
    heldHow: 'It stays where it is. A senior settles it first.',
    evidence: {
      title: 'The story of one test',
      back: 'Back to the test',
      made: (at: string, who: string) => `Printed ${dates.moment(at)} by ${who}`,
      foot: 'Health record. Show it only to those who may see it. Then shred it.',
      person: 'Person',
      born: 'Birth date',
      code: 'Code',
      test: 'Test',
      reference: 'Reference',
      result: 'Result',
      rules: 'Rules',
      noReference: 'not registered',
      noResult: 'none yet',
      noCode: 'none',
      columns: { at: 'When', what: 'What happened', who: 'Who', id: 'Record' },
      recordsNote:
        'Each record has a number made from its own words. Change a word and the number is another. The first 10 signs of each number are shown. Times are those of the tablet.',
      struck: 'Put right later:',
      doubts: 'What did not fit, and who settled it',
      noDoubts: 'Nothing on record speaks against it.',
      check: {
        title: 'Are the records whole?',
        running: 'Counting all records again.',
        whole: (facts: number) =>
          `All ${facts} records on this tablet were counted again. Every number is right.`,
        odd: (facts: number) =>
          `All ${facts} records were counted again. Every number is right, but something needs a word.`,
        broken: (position: number) =>
          `Record ${position} is not as it was written. Ring whoever looks after the server.`,
        head: (position: number) => `The chain ends at record ${position} with`,
        waiting: (count: number) =>
          plural(count, {
            one: '1 record of this test is not at the server yet.',
            other: `${count} records of this test are not at the server yet.`,
          }),
        none: 'This device keeps no chain that could be counted.',
        oddities: (count: number) =>
          plural(count, {
            one: '1 break in a tablet’s own line of records.',
            other: `${count} breaks in the tablets’ own lines of records.`,
          }),
        missing: (count: number) =>
          plural(count, {
            one: '1 name or note is missing, and nobody erased it.',
            other: `${count} names or notes are missing, and nobody erased them.`,
          }),
      },
    },
  };
}
