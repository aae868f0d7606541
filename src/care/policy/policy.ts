import * as v from 'valibot';
import { rulePack } from '../consent/rule-pack.ts';
import { line, word } from '../kind.ts';
import { ladder } from '../practice/ladder.ts';
import { actionKinds, outcomes } from '../results/facts.ts';
import { roles } from '../staff/facts.ts';
import { cautions } from '../support/facts.ts';
import { day } from '../time.ts';
import { wallSpans } from '../usual-times.ts';

/** A value of policy is never bare: it says where it comes from and since when it holds. */
const sourced = <S extends v.GenericSchema>(value: S) =>
  v.strictObject({
    value,
    source: line,
    from: day,
    until: v.exactOptional(day),
    note: v.exactOptional(line),
  });

const whole = (min: number, max: number) =>
  v.pipe(v.number(), v.integer(), v.minValue(min), v.maxValue(max));
/** A chance in 10,000, never 0 or 1: nothing is certain beforehand, and facts carry whole numbers only. */
const chance = whole(1, 9999);
const chance10000 = whole(1, 10_000);
const betaCounts = v.strictObject({ right: whole(1, 100_000), wrong: whole(1, 100_000) });
const listOfDays = v.pipe(v.array(whole(0, 60)), v.maxLength(20));

export const personWords = ['resident', 'tenant', 'supported'] as const;
export type PersonWord = (typeof personWords)[number];

/** How units are kept apart: not at all, by a full change of PPE between them, or by a pair for each. */
export const unitsApart = ['no', 'full-change', 'own-pair'] as const;
export type UnitsApart = (typeof unitsApart)[number];

/** How a code is made, so that a slip of the hand can be seen. Schemes are named as their standards name them. */
export const checkSchemes = [
  'none',
  'gs1-mod10',
  'luhn',
  'iso7064-mod11-2',
  'iso7064-mod37-2',
  'iso7064-mod97-10',
  'iso7064-mod11-10',
  'iso7064-mod27-26',
  'iso7064-mod37-36',
  'nhs-mod11',
  'mod11',
  'code39-mod43',
] as const;
export type CheckScheme = (typeof checkSchemes)[number];

/** How a code looks, and the scheme of its check characters (custody/code-rules.ts). */
export interface CodeRule {
  readonly pattern: string;
  readonly scheme: CheckScheme;
}

/**
 * A pattern (ECMAScript, `u`) that a whole code must match. `(?<checked>…)` marks the part that the
 * check scheme covers, check characters at its end; without it the scheme covers the whole code.
 */
const codePattern = v.strictObject({
  value: v.pipe(line, v.check(isPattern, 'is no pattern that this program can read')),
  source: line,
});

function isPattern(pattern: string): boolean {
  try {
    return new RegExp(`^(?:${pattern})$`, 'u') instanceof RegExp;
  } catch {
    return false;
  }
}

/** Drawings the app has for the parts of a kit. */
export const kitPictures = ['swab', 'tube', 'absorbent', 'bag', 'label', 'leaflet', 'kit'] as const;

const kitKind = v.strictObject({
  id: word,
  name: line,
  contents: v.pipe(
    v.array(v.strictObject({ part: line, picture: v.picklist(kitPictures) })),
    v.minLength(1),
  ),
  codePattern,
  codeScheme: v.picklist(checkSchemes),
  /** The product's GS1 number as printed on its box, 8 to 14 digits: one scan then names the kind. */
  gtin: v.exactOptional(v.pipe(v.string(), v.regex(/^[0-9]{8,14}$/))),
  /** Where the service makes its own codes for this kind: two to four letters or digits of its own. */
  ownPrefix: v.exactOptional(v.pipe(v.string(), v.regex(/^[0-9A-Z]{2,4}$/))),
  /** Hours that a sealed tube may wait, and the temperatures between which it waits. */
  storage: v.strictObject({
    hours: whole(1, 24 * 14),
    minCelsius: v.number(),
    maxCelsius: v.number(),
    source: line,
  }),
  nothingByMouthMinutes: sourced(whole(0, 240)),
});

const testKind = v.strictObject({
  id: word,
  name: line,
  kits: v.pipe(v.array(word), v.minLength(1)),
  laboratory: v.strictObject({
    name: line,
    phone: line,
    opens: word,
    closes: word,
    days: v.array(whole(1, 7)),
  }),
  /** Who takes the registration and gives the reference back. */
  registrar: v.strictObject({ name: line, phone: line }),
  resultHours: sourced(whole(1, 24 * 14)),
});

const action = v.strictObject({
  action: v.picklist(actionKinds),
  role: v.picklist(roles),
  withinHours: whole(0, 24 * 14),
  source: line,
});

/**
 * One version of one policy: every rule that a public authority, a laboratory or the service sets,
 * as data. The service's health protection team and the leaflet in the kit override all of it.
 */
export const policySchema = v.strictObject({
  policy: word,
  version: whole(1, 9999),
  title: line,
  jurisdiction: line,
  /** What the service calls the people it supports. */
  personWord: v.exactOptional(v.picklist(personWords)),
  /** True for the demo's own policy: nobody may work by it. */
  invented: v.boolean(),
  issued: day,
  tests: v.pipe(v.array(testKind), v.minLength(1)),
  kits: v.pipe(v.array(kitKind), v.minLength(1)),
  technique: v.strictObject({
    throatSeconds: sourced(whole(1, 60)),
    nostrilSeconds: sourced(v.strictObject({ least: whole(1, 60), most: whole(1, 60) })),
    secondTryAfterMinutes: sourced(whole(0, 1440)),
    triesPerDay: sourced(whole(1, 10)),
    identityHoldsMinutes: sourced(whole(1, 240)),
    samePairMayResumeMinutes: sourced(whole(0, 240)),
    mayStartAlone: sourced(v.boolean()),
    /** How many colleagues who know them must be there for somebody who cannot say their name. */
    knownByAtLeast: v.exactOptional(sourced(whole(1, 2))),
  }),
  due: v.strictObject({
    routineEveryDays: sourced(v.nullable(whole(1, 60))),
    symptomsWithinDays: sourced(whole(0, 14)),
    symptomsCountForDays: sourced(whole(1, 28)),
    contactOnDays: sourced(listOfDays),
    wholeHomeOnDays: sourced(listOfDays),
    returnOnDays: sourced(listOfDays),
    admissionOnDays: sourced(listOfDays),
    repeatWithinDays: sourced(whole(0, 14)),
    notAfterPositiveDays: sourced(whole(0, 365)),
  }),
  /** How results that do not fit the history are weighed, in 10,000; without it none is challenged. */
  fit: v.exactOptional(
    v.strictObject({
      /** How often a tube is somebody else's, before anything is known of its result. */
      swapChance: sourced(chance),
      sensitivity: sourced(chance),
      specificity: sourced(chance),
      /** The chance of a positive result by what is known of the person that day. */
      chancePositive: v.strictObject({
        background: sourced(chance),
        contact: sourced(chance),
        symptoms: sourced(chance),
        afterPositive: sourced(chance),
      }),
      /** Two positives at most so many days apart should have no negative between them. */
      negativeBetweenDays: sourced(whole(1, 60)),
    }),
  ),
  /**
   * How results are interpreted and waited for. Without it no figures are shown. Counts are those of a
   * validation study (found, missed), from which comes a Beta; shares and correlations in 10,000.
   */
  interpretation: v.exactOptional(
    v.strictObject({
      sensitivity: sourced(betaCounts),
      specificity: sourced(betaCounts),
      /** How much of the full yield a swab of these sites has. */
      siteYield: sourced(
        v.strictObject({ throatAndNose: chance10000, nose: chance10000, throat: chance10000 }),
      ),
      /** By how much the sensitivity falls with a short swab or a long way to the laboratory. */
      shortSwab: sourced(chance10000),
      longWay: sourced(v.strictObject({ hours: whole(1, 336), share: chance10000 })),
      /** Correlation of the misses of two swabs of one person. */
      repeatCorrelation: sourced(whole(0, 9999)),
      /** The chance before any test, by what is known; the second list while there is a case in the home. */
      before: sourced(
        v.strictObject({
          ...{ background: chance, contact: chance, symptoms: chance },
          ...{ backgroundWithCases: chance, contactWithCases: chance, symptomsWithCases: chance },
        }),
      ),
      /** Until this home has results enough, so many made-up waits are counted with its own. */
      waits: sourced(
        v.strictObject({
          enough: whole(1, 1000),
          hours: v.pipe(v.array(whole(1, 336)), v.maxLength(30)),
        }),
      ),
      wantedCertainty: sourced(chance),
      /** A treatment that helps only within so many hours of the first sign or the contact. */
      treatmentHours: v.exactOptional(sourced(whole(1, 336))),
    }),
  ),
  /** The number by which the health service or the home knows a person, where it has a form. */
  identifier: v.exactOptional(
    v.strictObject({ name: line, pattern: codePattern, scheme: v.picklist(checkSchemes) }),
  ),
  holds: v.strictObject({
    cautionsNeedingClinician: sourced(v.array(v.picklist(cautions))),
    photoRenewDays: sourced(whole(30, 3650)),
    /** Whether a plan that is past its review, or written twice over, keeps everybody from swabbing. */
    planPastReview: v.exactOptional(sourced(v.boolean())),
    planInConflict: v.exactOptional(sourced(v.boolean())),
  }),
  /** How decisions are recorded: which law's demands, how long one holds at most, what holds a swab. */
  decisions: v.exactOptional(
    v.strictObject({
      pack: sourced(word),
      packs: v.pipe(v.array(rulePack), v.minLength(1)),
      longestDays: sourced(whole(1, 1095)),
      /** A record is looked at again within so many days of the day it holds from. */
      reviewWithinDays: v.exactOptional(sourced(whole(1, 1095))),
      holdPastReview: sourced(v.boolean()),
      holdUntilDocumentSeen: sourced(v.boolean()),
    }),
  ),
  /** The small steps by which somebody gets used to a swab. */
  practice: v.exactOptional(
    v.strictObject({
      steps: ladder,
      everyDays: sourced(whole(1, 30)),
      /** Sessions at this home before a forecast is made at all. */
      fewestSessions: sourced(whole(1, 200)),
      /** Minutes that a step takes, until the home's own sessions tell better. */
      source: line,
    }),
  ),
  /** When people usually eat: a throat swab waits for `nothingByMouthMinutes` after it. */
  mealtimes: v.exactOptional(sourced(wallSpans)),
  /** When the cases here are an outbreak, and how units are then kept apart in a round. */
  outbreak: v.exactOptional(
    v.strictObject({
      casesAtLeast: sourced(whole(1, 20)),
      withinDays: sourced(whole(1, 60)),
      unitsApart: sourced(v.picklist(unitsApart)),
    }),
  ),
  /** Whether another home of the group is told what this one calls itself, where both used one code. */
  group: v.exactOptional(v.strictObject({ titleTold: sourced(v.boolean()) })),
  register: v.strictObject({ sameDay: sourced(v.boolean()) }),
  handOver: v.strictObject({ distanceMetres: sourced(v.number()) }),
  ppe: v.strictObject({
    aprons: sourced(whole(0, 10)),
    glovePairs: sourced(whole(0, 10)),
    masksPerStaff: sourced(whole(0, 10)),
    sparePercent: sourced(whole(0, 100)),
  }),
  kitsExpireSoonDays: sourced(whole(0, 90)),
  actions: v.strictObject(
    Object.fromEntries(outcomes.map((each) => [each, v.array(action)])) as Record<
      (typeof outcomes)[number],
      v.ArraySchema<typeof action, undefined>
    >,
  ),
  isolationDays: sourced(whole(0, 60)),
});
export type Policy = v.InferOutput<typeof policySchema>;
export type KitKind = Policy['kits'][number];
export type TestKind = Policy['tests'][number];
export type PolicyAction = Policy['actions']['positive'][number];

/** A policy that cannot be read says where: the path of the first value that is wrong. */
export type PolicyRead =
  | { readonly ok: true; readonly policy: Policy }
  | { readonly ok: false; readonly where: string; readonly what: string };

export function readPolicy(data: unknown): PolicyRead {
  const result = v.safeParse(policySchema, data);
  if (result.success) return { ok: true, policy: result.output };
  const [issue] = result.issues;
  return {
    ok: false,
    where: `/${v.getDotPath(issue)?.replaceAll('.', '/') ?? ''}`,
    what: issue.message,
  };
}
