import type { CheckScheme } from '../../../care/policy/policy.ts';
import type { Outcome } from '../../../care/results/facts.ts';
import type { LanguageTools } from '../language-tools.ts';

/** The policy in force: every value in words, where it comes from, and who confirmed it. */
export function policyWords({ dates, plural, list }: LanguageTools) {
  const days = (count: number) => plural(count, { one: '1 day', other: `${count} days` });
  const minutes = (count: number) => plural(count, { one: '1 minute', other: `${count} minutes` });
  const hours = (count: number) => plural(count, { one: '1 hour', other: `${count} hours` });
  const schemes: Record<CheckScheme, string> = {
    none: 'no check sign',
    'gs1-mod10': 'GS1 modulo 10',
    luhn: 'Luhn',
    'iso7064-mod11-2': 'ISO/IEC 7064 MOD 11-2',
    'iso7064-mod37-2': 'ISO/IEC 7064 MOD 37-2',
    'iso7064-mod97-10': 'ISO/IEC 7064 MOD 97-10',
    'iso7064-mod11-10': 'ISO/IEC 7064 MOD 11,10',
    'iso7064-mod27-26': 'ISO/IEC 7064 MOD 27,26',
    'iso7064-mod37-36': 'ISO/IEC 7064 MOD 37,36',
    'nhs-mod11': 'modulo 11, as in the NHS number',
    mod11: 'modulo 11',
    'code39-mod43': 'Code 39 modulo 43',
  };
  const after: Record<Outcome, string> = {
    positive: 'After a positive',
    negative: 'After a negative',
    void: 'After a void',
    inconclusive: 'After a result that is not clear',
    withdrawn: 'After a result is taken back',
  };
  return {
    title: 'Policy',
    days,
    minutes,
    hours,
    schemes,
    after,
    invented: 'This policy is made up. Nobody may work by it.',
    inventedWhy: 'It is for trying the tool. Put your own in its place first.',
    above: 'These come before it:',
    aboveWho:
      'your local health protection team, your laboratory, and the leaflet in the kit. The law comes before all.',
    name: (title: string, version: number) => `${title}, version ${version}.`,
    forWhere: (jurisdiction: string) => `Made for: ${jurisdiction}`,
    issued: (day: string) => `Written ${dates.date(day)}.`,
    confirmedBy: (who: string, at: string, from: string) =>
      `Confirmed by ${who} on ${dates.moment(at)}. In force from ${dates.date(from)}.`,
    notConfirmed: 'Nobody has confirmed it. A manager must.',
    changed: 'The file is not the one that was confirmed.',
    changedWhy: 'Somebody changed it since. Put the old one back, or read it and confirm it anew.',
    gone: (name: string, version: number) =>
      `Version ${version} of ${name} was confirmed, but this program does not carry it.`,
    goneWhy: 'Until it does, the first policy carried is used. Tell whoever looks after the tool.',
    confirm: 'Confirm a policy',
    onDay: 'Policy in force on this day',
    onDayHint: 'Pick a past day to see what held then.',
    source: (source: string, from: string) => `${source} Since ${dates.shortDate(from)}.`,
    sourceUntil: (source: string, from: string, until: string) =>
      `${source} From ${dates.shortDate(from)} to ${dates.shortDate(until)}.`,
    history: 'Confirmed so far',
    confirmation: (name: string, version: number, from: string) =>
      `${name}, version ${version}, from ${dates.date(from)}.`,
    noLonger: 'no longer counts',
    groups: {
      test: (name: string) => `Test: ${name}`,
      kit: (name: string) => `Kit: ${name}`,
      technique: 'How a swab is taken',
      due: 'Who is due, and when',
      holds: 'What holds a swab',
      handling: 'After the swab',
      ppe: 'Gloves, aprons, masks',
    },
    rows: {
      laboratory: 'Laboratory',
      laboratoryIs: (name: string, phone: string, opens: string, closes: string) =>
        `${name}, ${phone}. Open ${opens} to ${closes}.`,
      openDays: (names: readonly string[]) => `On ${list(names)}.`,
      registrar: 'Tests are registered with',
      registrarIs: (name: string, phone: string) => `${name}, ${phone}.`,
      resultHours: 'A result is late after',
      contents: 'In the kit',
      codePattern: 'Its code looks like',
      codeScheme: 'Check sign',
      storage: 'A sealed tube keeps',
      storageIs: (count: number, min: number, max: number) =>
        `${hours(count)}, between ${min} and ${max} °C`,
      nothingByMouth: 'Nothing by mouth before',
      throatSeconds: 'Throat',
      nostrilSeconds: 'Each nostril',
      seconds: (count: number) => `${count} seconds`,
      secondsRange: (least: number, most: number) => `${least} to ${most} seconds`,
      secondTry: 'A second try not before',
      triesPerDay: 'Tries in one day, at most',
      identityHolds: 'Who it is holds for',
      samePair: 'The same pair may go on within',
      alone: 'One person may swab alone',
      routine: 'Routine round',
      every: (count: number) => `every ${days(count)}`,
      noRoutine: 'none',
      symptoms: 'After symptoms',
      within: (count: number) => (count === 0 ? 'the same day' : `within ${days(count)}`),
      symptomsCount: 'Symptoms count for',
      contact: 'After contact with a case',
      wholeHome: 'When the whole home is tested',
      return: 'Back from hospital or leave',
      admission: 'New here',
      onDays: (counts: readonly number[]) =>
        counts.length === 0 ? 'never' : `on day ${list(counts.map(String))}`,
      repeat: 'Again after a void or a stop',
      notAfterPositive: 'Not again after a positive for',
      cautions: 'A clinician is asked about',
      photoRenew: 'A photo is renewed after',
      sameDay: 'Registered the same day',
      distance: 'Keep from the courier',
      metres: (count: number) => `${count} m`,
      aprons: 'Aprons for each person',
      gloves: 'Pairs of gloves for each person',
      masks: 'Masks for each of the pair',
      spare: 'Spare',
      percent: (count: number) => `${count} in 100`,
      kitsSoon: 'A lot ends soon when it has left',
      isolation: 'Isolation',
      yes: 'yes',
      no: 'no',
      action: (role: string, count: number) => `${role}, within ${hours(count)}`,
      actionNow: (role: string) => `${role}, at once`,
    },
    form: {
      title: 'Confirm a policy',
      lead: 'You say: from this day we work by this.',
      which: 'Which one?',
      from: 'From which day?',
      digest: 'Its mark',
      digestHint: 'Made from every letter of the file. A changed file has another mark.',
      press: 'Confirm it',
      cannot: 'This file cannot be marked, so it cannot be confirmed. A number in it is not whole.',
    },
  };
}
