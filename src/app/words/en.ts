import { actingWords } from './en/acting.ts';
import { afterPositiveWords } from './en/after-positive.ts';
import { bedsideWords } from './en/bedside.ts';
import { callWords } from './en/calls.ts';
import { cameraWords } from './en/camera.ts';
import { careWords } from './en/care.ts';
import { decidingWords } from './en/deciding.ts';
import { doorWords } from './en/door.ts';
import { easyReadWords } from './en/easy-read.ts';
import { factWords } from './en/facts.ts';
import { findingWords } from './en/findings.ts';
import { fitWords } from './en/fit.ts';
import { formWords } from './en/form.ts';
import { frameWords } from './en/frame.ts';
import { fromPaperWords } from './en/from-paper.ts';
import { handingWords } from './en/handing.ts';
import { helperWords } from './en/helpers.ts';
import { historyWords } from './en/history.ts';
import { identityWords } from './en/identity.ts';
import { importWords } from './en/importing.ts';
import { keepingWords } from './en/keeping.ts';
import { labelWords } from './en/labels.ts';
import { listWords } from './en/list.ts';
import { meaningWords } from './en/meaning.ts';
import { moreWords } from './en/more.ts';
import { navWords } from './en/nav.ts';
import { nowWords } from './en/now.ts';
import { packingWords } from './en/packing.ts';
import { pageWords } from './en/page.ts';
import { partsWords } from './en/parts.ts';
import { peopleWords } from './en/people.ts';
import { personWords } from './en/person.ts';
import { plannerWords } from './en/planner.ts';
import { policyWords } from './en/policy.ts';
import { practisingWords } from './en/practising.ts';
import { prepareWords } from './en/prepare.ts';
import { recordWords } from './en/record.ts';

import { refusalWords } from './en/refusals.ts';
import { registeringWords } from './en/registering.ts';
import { resultWords } from './en/results.ts';
import { roundListWords } from './en/round-list.ts';
import { roundWords } from './en/rounds.ts';
import { runSheetWords } from './en/run-sheet.ts';
import { scanWords } from './en/scan.ts';
import { staffWords } from './en/staff.ts';
import { suppliesWords } from './en/supplies.ts';
import { supportWords } from './en/support.ts';
import { tabletWords } from './en/tablets.ts';
import { takingInWords } from './en/taking-in.ts';
import { testPageWords } from './en/test-page.ts';
import { turnWords } from './en/turn.ts';
import { uploadingWords } from './en/uploading.ts';
import { usualTimesWords } from './en/usual-times.ts';
import { languageTools } from './language-tools.ts';
import type { WordSettings } from './settings.ts';

/** British English: the first language, whose shape every other language follows. */
export function english(settings: WordSettings) {
  const tools = languageTools('en-GB', settings);
  return {
    language: { code: 'en-GB', direction: 'ltr' as 'ltr' | 'rtl' },
    dates: tools.dates,
    person: personWords(settings.person),
    frame: frameWords(tools),
    bedside: bedsideWords(tools),
    scan: scanWords(),
    camera: cameraWords(),
    identity: identityWords(tools),
    labels: labelWords(),
    fit: fitWords(tools),
    turn: turnWords(tools),
    nav: navWords(),
    door: doorWords(tools),
    tablets: tabletWords(tools),
    findings: findingWords(tools),
    facts: factWords(tools),
    rounds: roundWords(tools),
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
    now: nowWords(tools),
    form: formWords(tools),
    list: listWords(),
    page: pageWords(tools),
    refusals: refusalWords(tools),
    keeping: keepingWords(),
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
    ...careWords(),
  };
}

/** What a language must say. A second one is a function `(settings) => Words` in its own file. */
export type Words = ReturnType<typeof english>;
