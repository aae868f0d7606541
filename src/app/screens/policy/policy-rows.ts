import type { KitKind, Policy, PolicyAction, TestKind } from '../../../care/policy/policy.ts';
import { outcomes } from '../../../care/results/facts.ts';
import type { AllWords } from '../../words/en-all.ts';
import { interpretationRows } from './interpretation-rows.ts';
import type { PolicyRow, Sourced } from './policy-row.ts';
import { row } from './policy-row.ts';

export interface PolicyGroup {
  readonly key: string;
  readonly title: string;
  readonly rows: readonly PolicyRow[];
}

/** Every value of a policy, in groups. A value that this does not show would be a rule nobody can see. */
export function policyGroups(policy: Policy, words: AllWords): PolicyGroup[] {
  const { groups } = words.policy;
  return [
    ...policy.tests.map((test) => ({
      key: `test-${test.id}`,
      title: groups.test(test.name),
      rows: testRows(test, words),
    })),
    ...policy.kits.map((kit) => ({
      key: `kit-${kit.id}`,
      title: groups.kit(kit.name),
      rows: kitRows(kit, words),
    })),
    { key: 'technique', title: groups.technique, rows: techniqueRows(policy, words) },
    { key: 'due', title: groups.due, rows: dueRows(policy, words) },
    { key: 'holds', title: groups.holds, rows: holdRows(policy, words) },
    { key: 'handling', title: groups.handling, rows: handlingRows(policy, words) },
    { key: 'identity', title: words.fit.policy.group, rows: identityRows(policy, words) },
    { key: 'deciding', title: words.deciding.policy.group, rows: decidingRows(policy, words) },
    { key: 'practice', title: words.practising.policy.group, rows: practiceRows(policy, words) },
    {
      key: 'meaning',
      title: words.meaning.policy.group,
      rows: interpretationRows(policy, words),
    },
    { key: 'ppe', title: groups.ppe, rows: ppeRows(policy, words) },
    { key: 'outbreak', title: groups.outbreak, rows: outbreakRows(policy, words) },
    ...outcomes.map((outcome) => ({
      key: outcome,
      title: words.policy.after[outcome],
      rows: policy.actions[outcome].map((action) => actionRow(action, words)),
    })),
  ].filter(({ rows }) => rows.length > 0);
}

const bare = (key: string, label: string, value: string, source?: string): PolicyRow => ({
  key,
  label,
  value,
  source,
  note: undefined,
});

function testRows({ laboratory, registrar, resultHours }: TestKind, words: AllWords): PolicyRow[] {
  const { rows: say, hours } = words.policy;
  const { name, phone, opens, closes, days } = laboratory;
  // 1 January 2024 was a Monday, the first day of the week by ISO 8601.
  const names = days.map((day) => words.dates.weekday(`2024-01-0${day}T12:00:00.000Z`));
  return [
    bare(
      'laboratory',
      say.laboratory,
      `${say.laboratoryIs(name, phone, opens, closes)} ${say.openDays(names)}`,
    ),
    bare('registrar', say.registrar, say.registrarIs(registrar.name, registrar.phone)),
    row(['resultHours', say.resultHours], resultHours, { words, say: hours }),
  ];
}

function kitRows(kit: KitKind, words: AllWords): PolicyRow[] {
  const { rows: say, minutes, schemes } = words.policy;
  const { hours, minCelsius, maxCelsius, source } = kit.storage;
  return [
    bare('contents', say.contents, kit.contents.map(({ part }) => part).join('. ')),
    bare('codePattern', say.codePattern, kit.codePattern.value, kit.codePattern.source),
    bare('codeScheme', say.codeScheme, schemes[kit.codeScheme]),
    bare('storage', say.storage, say.storageIs(hours, minCelsius, maxCelsius), source),
    row(['nothingByMouth', say.nothingByMouth], kit.nothingByMouthMinutes, { words, say: minutes }),
  ];
}

function techniqueRows({ technique, mealtimes }: Policy, words: AllWords): PolicyRow[] {
  const { rows: say, minutes } = words.policy;
  return [
    row(['throatSeconds', say.throatSeconds], technique.throatSeconds, { words, say: say.seconds }),
    row(['nostrilSeconds', say.nostrilSeconds], technique.nostrilSeconds, {
      words,
      say: ({ least, most }) => say.secondsRange(least, most),
    }),
    row(['secondTry', say.secondTry], technique.secondTryAfterMinutes, { words, say: minutes }),
    row(['triesPerDay', say.triesPerDay], technique.triesPerDay, { words, say: String }),
    row(['identityHolds', say.identityHolds], technique.identityHoldsMinutes, {
      words,
      say: minutes,
    }),
    row(['samePair', say.samePair], technique.samePairMayResumeMinutes, { words, say: minutes }),
    row(['alone', say.alone], technique.mayStartAlone, { words, say: yesNo(words) }),
    ...(mealtimes
      ? [row(['mealtimes', say.mealtimes], mealtimes, { words, say: words.usual.spans })]
      : []),
  ];
}

const yesNo =
  ({ policy }: AllWords) =>
  (value: boolean) =>
    value ? policy.rows.yes : policy.rows.no;

function dueRows({ due }: Policy, words: AllWords): PolicyRow[] {
  const { rows: say, days } = words.policy;
  return [
    row(['routine', say.routine], due.routineEveryDays, {
      words,
      say: (count) => (count === null ? say.noRoutine : say.every(count)),
    }),
    row(['symptoms', say.symptoms], due.symptomsWithinDays, { words, say: say.within }),
    row(['symptomsCount', say.symptomsCount], due.symptomsCountForDays, { words, say: days }),
    row(['contact', say.contact], due.contactOnDays, { words, say: say.onDays }),
    row(['wholeHome', say.wholeHome], due.wholeHomeOnDays, { words, say: say.onDays }),
    row(['return', say.return], due.returnOnDays, { words, say: say.onDays }),
    row(['admission', say.admission], due.admissionOnDays, { words, say: say.onDays }),
    row(['repeat', say.repeat], due.repeatWithinDays, { words, say: say.within }),
    row(['notAfterPositive', say.notAfterPositive], due.notAfterPositiveDays, {
      words,
      say: days,
    }),
  ];
}

function holdRows({ holds }: Policy, words: AllWords): PolicyRow[] {
  const { rows: say, days } = words.policy;
  return [
    row(['cautions', say.cautions], holds.cautionsNeedingClinician, {
      words,
      say: (names) => names.map((name) => words.cautions[name]).join(', '),
    }),
    row(['photoRenew', say.photoRenew], holds.photoRenewDays, { words, say: days }),
    ...(holds.planPastReview === undefined
      ? []
      : [
          row(['planLate', words.deciding.policy.planLate], holds.planPastReview, {
            words,
            say: yesNo(words),
          }),
        ]),
    ...(holds.planInConflict === undefined
      ? []
      : [
          row(['planTwo', words.deciding.policy.planTwo], holds.planInConflict, {
            words,
            say: yesNo(words),
          }),
        ]),
  ];
}

function handlingRows(policy: Policy, words: AllWords): PolicyRow[] {
  const { rows: say, days } = words.policy;
  return [
    row(['sameDay', say.sameDay], policy.register.sameDay, { words, say: yesNo(words) }),
    row(['distance', say.distance], policy.handOver.distanceMetres, { words, say: say.metres }),
    row(['kitsSoon', say.kitsSoon], policy.kitsExpireSoonDays, { words, say: days }),
    row(['isolation', say.isolation], policy.isolationDays, { words, say: days }),
  ];
}

function ppeRows({ ppe }: Policy, words: AllWords): PolicyRow[] {
  const { rows: say } = words.policy;
  return [
    row(['aprons', say.aprons], ppe.aprons, { words, say: String }),
    row(['gloves', say.gloves], ppe.glovePairs, { words, say: String }),
    row(['masks', say.masks], ppe.masksPerStaff, { words, say: String }),
    row(['spare', say.spare], ppe.sparePercent, { words, say: say.percent }),
  ];
}

function outbreakRows({ outbreak }: Policy, words: AllWords): PolicyRow[] {
  if (outbreak === undefined) return [];
  const { policy: say } = words.helpers;
  return [
    row(['cases', say.cases], outbreak.casesAtLeast, { words, say: say.casesIs }),
    row(['within', say.within], outbreak.withinDays, { words, say: words.policy.days }),
    row(['units', say.units], outbreak.unitsApart, { words, say: (how) => say.apart[how] }),
  ];
}

function actionRow(
  { action, role, withinHours, source }: PolicyAction,
  words: AllWords,
): PolicyRow {
  const { rows: say } = words.policy;
  const who = words.roles[role];
  const value = withinHours === 0 ? say.actionNow(who) : say.action(who, withinHours);
  return bare(action, words.now.actions[action], value, source);
}

/** What identity rests on, and the numbers by which a result that does not fit is weighed. */
function identityRows({ technique, identifier, fit, group }: Policy, words: AllWords): PolicyRow[] {
  const say = words.fit.policy;
  const chance = (key: keyof typeof say.rows, given: Sourced<number>) =>
    row([key, say.rows[key]], given, { words, say: say.inTenThousand });
  const { knownByAtLeast } = technique;
  const known = ['knownByAtLeast', say.rows.knownByAtLeast] as const;
  const between = ['negativeBetweenDays', say.rows.negativeBetweenDays] as const;
  return [
    ...(knownByAtLeast === undefined
      ? []
      : [row(known, knownByAtLeast, { words, say: say.known })]),
    ...(identifier === undefined
      ? []
      : [
          bare(
            'identifier',
            say.rows.identifier,
            `${identifier.name}: ${identifier.pattern.value}, ${words.policy.schemes[identifier.scheme]}`,
            identifier.pattern.source,
          ),
        ]),
    ...(group === undefined
      ? []
      : [row(['titleTold', say.rows.titleTold], group.titleTold, { words, say: yesNo(words) })]),
    ...(fit === undefined
      ? []
      : [
          chance('swapChance', fit.swapChance),
          chance('sensitivity', fit.sensitivity),
          chance('specificity', fit.specificity),
          chance('background', fit.chancePositive.background),
          chance('contact', fit.chancePositive.contact),
          chance('symptoms', fit.chancePositive.symptoms),
          chance('afterPositive', fit.chancePositive.afterPositive),
          row(between, fit.negativeBetweenDays, { words, say: say.days }),
        ]),
  ];
}

function decidingRows({ decisions }: Policy, words: AllWords): PolicyRow[] {
  if (decisions === undefined) return [];
  const say = words.deciding.policy;
  const yes = { words, say: yesNo(words) };
  const title = (id: string) => decisions.packs.find(({ pack }) => pack === id)?.title ?? id;
  return [
    row(['pack', say.pack], decisions.pack, { words, say: title }),
    row(['longest', say.longest], decisions.longestDays, { words, say: words.policy.days }),
    ...(decisions.reviewWithinDays === undefined
      ? []
      : [
          row(['within', say.reviewWithin], decisions.reviewWithinDays, {
            ...{ words, say: words.policy.days },
          }),
        ]),
    row(['late', say.late], decisions.holdPastReview, yes),
    row(['paper', say.paper], decisions.holdUntilDocumentSeen, yes),
    ...decisions.packs.map(({ pack, title: value, version, source, jurisdiction }) => ({
      key: `pack-${pack}`,
      label: say.known,
      value: say.version(value, version),
      source,
      note: jurisdiction,
    })),
  ];
}

function practiceRows({ practice }: Policy, words: AllWords): PolicyRow[] {
  if (practice === undefined) return [];
  const say = words.practising;
  return [
    row(['every', say.policy.every], practice.everyDays, { words, say: words.policy.days }),
    row(['fewest', say.policy.fewest], practice.fewestSessions, { words, say: String }),
    ...practice.steps.map(({ step, title, minutes }, i) => ({
      key: `step-${step}`,
      label: say.step(i + 1, practice.steps.length),
      value: say.policy.step(title, minutes),
      source: practice.source,
      note: undefined,
    })),
  ];
}
