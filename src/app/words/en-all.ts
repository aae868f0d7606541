import { actingWords } from './en/acting.ts';
import { afterPositiveWords } from './en/after-positive.ts';
import { callWords } from './en/calls.ts';
import { decidingWords } from './en/deciding.ts';
import { easyReadWords } from './en/easy-read.ts';
import { factWords } from './en/facts.ts';
import { findingWords } from './en/findings.ts';
import { fitWords } from './en/fit.ts';
import { fromPaperWords } from './en/from-paper.ts';
import { handingWords } from './en/handing.ts';
import { helperWords } from './en/helpers.ts';
import { historyWords } from './en/history.ts';
import { importWords } from './en/importing.ts';
import { labelWords } from './en/labels.ts';
import { meaningWords } from './en/meaning.ts';
import { moreWords } from './en/more.ts';
import { packingWords } from './en/packing.ts';
import { partsWords } from './en/parts.ts';
import { peopleWords } from './en/people.ts';
import { plannerWords } from './en/planner.ts';
import { policyWords } from './en/policy.ts';
import { practisingWords } from './en/practising.ts';
import { prepareWords } from './en/prepare.ts';
import { recordWords } from './en/record.ts';
import { registeringWords } from './en/registering.ts';
import { resultWords } from './en/results.ts';
import { roundListWords } from './en/round-list.ts';
import { runSheetWords } from './en/run-sheet.ts';
import { staffWords } from './en/staff.ts';
import { suppliesWords } from './en/supplies.ts';
import { supportWords } from './en/support.ts';
import { tabletWords } from './en/tablets.ts';
import { takingInWords } from './en/taking-in.ts';
import { testPageWords } from './en/test-page.ts';
import { uploadingWords } from './en/uploading.ts';
import { usualTimesWords } from './en/usual-times.ts';
import { english } from './en.ts';
import { languageTools } from './language-tools.ts';
import type { WordSettings } from './settings.ts';

/** All of British English: the bedside's words, and those of the pages that come later. */
export function allEnglish(settings: WordSettings) {
  const tools = languageTools('en-GB', settings);
  return {
    ...english(settings),
    labels: labelWords(),
    tablets: tabletWords(tools),
    fit: fitWords(tools),
    findings: findingWords(tools),
    facts: factWords(tools),
    roundList: roundListWords(tools),
    prepare: prepareWords(tools),
    planner: plannerWords(tools),
    usual: usualTimesWords(tools),
    helpers: helperWords(tools),
    runSheet: runSheetWords(tools),
    fromPaper: fromPaperWords(),
    packing: packingWords(tools),
    handing: handingWords(tools),
    registering: registeringWords(tools),
    uploading: uploadingWords(tools),
    results: resultWords(tools),
    acting: actingWords(tools),
    testPage: testPageWords(tools),
    takingIn: takingInWords(tools),
    calls: callWords(tools),
    meaning: meaningWords(tools),
    afterPositive: afterPositiveWords(tools),
    parts: partsWords(),
    people: peopleWords(tools, settings),
    record: recordWords(tools),
    support: supportWords(),
    deciding: decidingWords(tools),
    easyRead: easyReadWords(tools),
    practising: practisingWords(tools),
    staffing: staffWords(tools),
    importing: importWords(tools),
    supplies: suppliesWords(tools),
    policy: policyWords(tools),
    more: moreWords(),
    history: historyWords(tools),
  };
}

/** All that a language must say. A second one is a function `(settings) => AllWords` in its own file. */
export type AllWords = ReturnType<typeof allEnglish>;
