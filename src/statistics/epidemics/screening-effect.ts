import { type Chance, uniform } from '../random/chance.ts';
import { count, firstRefusal, nonNegative, positiveCount, probability } from '../refusal/checks.ts';
import { given, type Outcome, type Refusal } from '../refusal/refusal.ts';
import { COURSE_DAYS, type Course, drawCourse, emptyCourse } from './viral-load-course.ts';

export interface ScreeningPolicy {
  /** log10 of the least viral load the test finds. */
  readonly detectionLimit: number;
  readonly everyDays: number;
  /** Days from test to result. */
  readonly delayDays: number;
  /** Chance that a test above its limit comes out positive; 1 unless given. */
  readonly sensitivity?: number;
}

/** Shares of all infectiousness over a course. */
export interface ScreeningEffect {
  readonly removedByTesting: number;
  readonly removedBySymptoms: number;
  readonly remaining: number;
  /** How much less than with isolation on symptoms alone: 1 - remaining / remaining without tests. */
  readonly reduction: number;
  /**
   * remaining / (1 - removedBySymptoms), the ratio of the published code. It understates what is
   * left, since symptoms remove less once testing has come first.
   */
  readonly publishedFactor: number;
}

export interface ScreeningOptions {
  readonly courses?: number;
  /** Share of the infected who get symptoms; 0.35 as published. */
  readonly symptomatic?: number;
}

const INFECTIOUS_FROM = 6;

/** Infectiousness from each day to the end: the excess of log10 load over 6, summed. */
function remainders({ load }: Course, into: Float64Array): void {
  let sum = 0;
  for (let t = COURSE_DAYS - 1; t >= 0; t--) {
    sum += Math.max(0, (load[t] as number) - INFECTIOUS_FROM);
    into[t] = sum;
  }
}

/** Removed so far, summed over courses, for one policy. */
interface Tally {
  byTesting: number;
  bySymptoms: number;
}

interface Person {
  readonly course: Course;
  readonly after: Float64Array;
}

const restAfter = (after: Float64Array, day: number): number =>
  day < COURSE_DAYS ? (after[day] as number) : 0;

/** One positive on a day, met with this chance: whichever of result and symptoms comes first. */
function isolate({ course, after }: Person, day: number, chance: number, tally: Tally): void {
  const removed = chance * restAfter(after, Math.min(day, course.symptomDay));
  if (day < course.symptomDay) tally.byTesting += removed;
  else if (day > course.symptomDay || course.symptomDay === COURSE_DAYS)
    tally.bySymptoms += removed;
  else {
    // On the same day: either, as often.
    tally.byTesting += removed / 2;
    tally.bySymptoms += removed / 2;
  }
}

/** Averages over the phase of the testing rota, each phase as likely. */
function addPerson(
  person: Person,
  { detectionLimit, everyDays, delayDays, sensitivity = 1 }: ScreeningPolicy,
  tally: Tally,
): void {
  const { load, symptomDay } = person.course;
  let first = 0;
  while (first < COURSE_DAYS && (load[first] as number) <= detectionLimit) first++;
  let end = first;
  while (end < COURSE_DAYS && (load[end] as number) > detectionLimit) end++;
  const share = 1 / everyDays;
  const phases = Math.min(everyDays, COURSE_DAYS);
  for (let offset = 0; offset < phases; offset++) {
    let missed = share;
    for (let day = first + offset; day < end && missed > 0; day += everyDays) {
      isolate(person, day + delayDays, missed * sensitivity, tally);
      missed *= 1 - sensitivity;
    }
    if (missed > 0) tally.bySymptoms += missed * restAfter(person.after, symptomDay);
  }
  // All later phases fall after the course.
  tally.bySymptoms += (everyDays - phases) * share * restAfter(person.after, symptomDay);
}

function check(
  policies: readonly ScreeningPolicy[],
  courses: number,
  symptomatic: number,
): Refusal | undefined {
  return firstRefusal(
    positiveCount('courses', courses),
    probability('symptomatic', symptomatic),
    ...policies.flatMap((p) => [
      nonNegative('detectionLimit', p.detectionLimit),
      positiveCount('everyDays', p.everyDays),
      count('delayDays', p.delayDays),
      probability('sensitivity', p.sensitivity ?? 1),
    ]),
  );
}

/**
 * What testing so often, with such a test and such a delay, takes off the spread, by simulated
 * courses of infection. All policies are judged on the same courses.
 * Error: about 0.4 / sqrt(courses) on each share: 0.001 at the 200,000 drawn unless told otherwise.
 * Source: the infectiousness part of Larremore et al. (2021), Science Advances 7:eabd5393.
 */
export function screeningEffects(
  policies: readonly ScreeningPolicy[],
  chance: Chance,
  { courses = 200_000, symptomatic = 0.35 }: ScreeningOptions = {},
): Outcome<readonly ScreeningEffect[]> {
  const refused = check(policies, courses, symptomatic);
  if (refused) return refused;
  const person = { course: emptyCourse(), after: new Float64Array(COURSE_DAYS) };
  const tallies = policies.map((): Tally => ({ byTesting: 0, bySymptoms: 0 }));
  let [all, bySymptomsAlone] = [0, 0];
  for (let c = 0; c < courses; c++) {
    drawCourse(chance, uniform(chance) < symptomatic, person.course);
    remainders(person.course, person.after);
    all += person.after[0] as number;
    bySymptomsAlone += restAfter(person.after, person.course.symptomDay);
    for (let i = 0; i < policies.length; i++)
      addPerson(person, policies[i] as ScreeningPolicy, tallies[i] as Tally);
  }
  return given(tallies.map((tally) => shares(tally, all, bySymptomsAlone)));
}

function shares(
  { byTesting, bySymptoms }: Tally,
  all: number,
  bySymptomsAlone: number,
): ScreeningEffect {
  const remaining = Math.max(0, all - byTesting - bySymptoms);
  return {
    removedByTesting: byTesting / all,
    removedBySymptoms: bySymptoms / all,
    remaining: remaining / all,
    reduction: 1 - remaining / (all - bySymptomsAlone),
    publishedFactor: remaining / (all - bySymptoms),
  };
}
