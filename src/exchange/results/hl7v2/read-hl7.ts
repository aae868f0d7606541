import type { Outcome } from '../../../care/results/facts.ts';
import type { Day, Zone } from '../../../care/time.ts';
import { dayOfMoment, dayWritten } from '../day-told.ts';
import type { OwnWords } from '../meaning-of-words.ts';
import { outcomeMeant, testMeant, together } from '../meaning-of-words.ts';
import type { Ask, ReadReports, ReportedResult, ReportStatus } from '../reported.ts';
import { unread } from '../reported.ts';
import type { Delimiters, Message, Segment } from './message.ts';
import { component, fieldOf, readMessages, repetitions } from './message.ts';

export interface HlSettings {
  /** The service's zone: a time without an offset is a laboratory's wall time there. */
  readonly zone: Zone;
  readonly words?: OwnWords;
}

/** The results in one file or transmission of ORU^R01 messages (HL7 v2.5.1, chapter 7). */
export function readHl7(text: string, settings: HlSettings): ReadReports {
  const read = readMessages(text);
  if (!read.ok) return read;
  const reports: ReportedResult[] = [];
  for (const [i, message] of read.messages.entries()) {
    const wrong = notOru(message);
    if (wrong !== undefined)
      return unread('not-results', wrong, { at: 'segment', message: i + 1, segment: 'MSH-9' });
    reports.push(...reportsIn(message, i + 1, settings));
  }
  return reports.length === 0
    ? unread('not-results', 'No message holds an order with a result (OBR).')
    : { ok: true, reports };
}

function notOru({ segments, delimiters }: Message): string | undefined {
  const [msh] = segments;
  const type = msh === undefined ? '' : fieldOf(msh, 9);
  const [what, event] = [component(type, 1, delimiters), component(type, 2, delimiters)];
  if (what === 'ORU' && (event === 'R01' || event === '')) return undefined;
  return `This is ${what || 'nothing'}^${event}; only ORU^R01 brings results.`;
}

/** One order: OBR with its own OBX and SPM segments. */
interface Order {
  readonly obr: Segment;
  readonly number: number;
  readonly obx: Segment[];
  readonly spm: Segment[];
}

function reportsIn(message: Message, number: number, settings: HlSettings): ReportedResult[] {
  const { segments, delimiters: d } = message;
  let pid: Segment | undefined;
  const orders: (Order & { pid: Segment | undefined })[] = [];
  for (const segment of segments) {
    if (segment.name === 'PID') pid = segment;
    if (segment.name === 'OBR')
      orders.push({ obr: segment, number: orders.length + 1, obx: [], spm: [], pid });
    const order = orders.at(-1);
    if (order === undefined) continue;
    if (segment.name === 'OBX') order.obx.push(segment);
    if (segment.name === 'SPM') order.spm.push(segment);
  }
  const sender = component(fieldOf(segments[0] as Segment, 4), 1, d);
  return orders.map((order) => reportOf(order, { d, number, settings, sender }));
}

interface Around {
  readonly d: Delimiters;
  readonly number: number;
  readonly settings: HlSettings;
  readonly sender: string;
}

const CODE = /^[\x21-\x7e]{4,48}$/;

function reportOf(order: Order & { pid: Segment | undefined }, around: Around): ReportedResult {
  const { d, number, settings, sender } = around;
  const { obr, obx, pid } = order;
  const asks: Ask[] = [];
  const codes = codesOf(order, d);
  if (codes.length === 0) asks.push({ ask: 'code-missing' });
  for (const code of codes)
    if (!CODE.test(code)) asks.push({ ask: 'code-unreadable', given: code });
  const all = obx.map((each) => observation(each, d, settings.words));
  const left = all.filter((part) => !isTakenBack(part));
  // What the laboratory took back says nothing any more, unless it took back everything.
  const parts = left.length > 0 ? left : all;
  const tests = [...new Set(parts.flatMap(({ test }) => (test === '' ? [] : [test])))];
  for (const { test, isLoinc } of parts)
    if (isLoinc && testMeant(test) === undefined) asks.push({ ask: 'test-unknown', given: test });
  const status = statusOf(component(fieldOf(obr, 25), 1, d), all);
  const outcome =
    status === 'withdrawn' ? 'withdrawn' : together(parts.map((part) => part.outcome));
  const said = [...new Set(parts.map((part) => part.said))].join(', ').slice(0, 200);
  if (outcome === undefined) asks.push({ ask: 'words-unknown', given: said });
  const at = [
    fieldOf(obr, 22),
    ...obx.flatMap((each) => [fieldOf(each, 19), fieldOf(each, 14)]),
  ].find((field) => component(field, 1, d) !== '');
  const dayAsked = (given: string, about: 'reported' | 'born'): Day | undefined => {
    const day = dayIn(given, settings.zone);
    if (day === undefined)
      asks.push({ ask: 'day-unclear', about, given: given.slice(0, 60), why: 'not-a-date' });
    return day;
  };
  if (at === undefined) asks.push({ ask: 'day-missing' });
  const born = pid === undefined ? '' : component(fieldOf(pid, 7), 1, d);
  return {
    place: { at: 'segment', message: number, segment: `OBR[${order.number}]` },
    codes,
    outcome,
    said,
    status,
    reported: at === undefined ? undefined : dayAsked(component(at, 1, d), 'reported'),
    name: pid === undefined ? '' : nameOf(pid, d),
    // A birth date is a day as it stands, in no zone.
    born: born === '' ? undefined : dayAsked(born.slice(0, 8), 'born'),
    reference: component(fieldOf(obr, 2), 1, d),
    report: component(fieldOf(obr, 3), 1, d),
    laboratory: component(obx[0] === undefined ? '' : fieldOf(obx[0], 23), 1, d) || sender,
    tests,
    asks,
  };
}

/** The placer's number of the specimen (SPM-2.1), the order's (OBR-2): the tube's code stands in one. */
function codesOf({ obr, spm }: Order, d: Delimiters): string[] {
  const specimens = spm.map((segment) => component(fieldOf(segment, 2), 1, d));
  const all = [...specimens, component(fieldOf(obr, 2), 1, d)].filter((code) => code !== '');
  return [...new Set(all)];
}

function nameOf(pid: Segment, d: Delimiters): string {
  const [name = ''] = repetitions(fieldOf(pid, 5), d);
  const [family, given, more] = [1, 2, 3].map((at) => component(name, at, d));
  return [given, more, family].filter(Boolean).join(' ').slice(0, 200);
}

interface Part {
  readonly test: string;
  readonly isLoinc: boolean;
  readonly outcome: Outcome | undefined;
  readonly said: string;
  readonly status: string;
}

/** OBX-5 by its code or its words; a coded value in another scheme may stand in components 4 to 6. */
function observation(obx: Segment, d: Delimiters, words: OwnWords | undefined): Part {
  const value = repetitions(fieldOf(obx, 5), d)[0] ?? '';
  const says = [1, 2, 4, 5].map((at) => component(value, at, d)).filter((text) => text !== '');
  const status = component(fieldOf(obx, 11), 1, d).toUpperCase();
  const meanings = new Set(says.flatMap((text) => outcomeMeant(text, words) ?? []));
  const [meaning] = meanings;
  const test = fieldOf(obx, 3);
  const own = component(test, 3, d) === 'LN';
  return {
    test: component(test, own || component(test, 6, d) !== 'LN' ? 1 : 4, d),
    isLoinc: own || component(test, 6, d) === 'LN',
    // A code and its words that disagree are not known.
    outcome: status === 'X' ? 'void' : meanings.size === 1 ? meaning : undefined,
    said: says[1] ?? says[0] ?? '',
    status,
  };
}

/** Table 0123 (OBR-25) and table 0085 (OBX-11): deleted and wrong take a result back, corrected corrects. */
function statusOf(order: string, parts: readonly Part[]): ReportStatus {
  const all = [order.toUpperCase(), ...parts.map(({ status }) => status)];
  const left = parts.filter((part) => !isTakenBack(part));
  if (parts.length > 0 && left.length === 0) return 'withdrawn';
  if (order.toUpperCase() === 'X') return 'withdrawn';
  const isOpen = (each: string) => ['P', 'I', 'S', 'R', 'O', 'A', 'N'].includes(each);
  // Some were taken back, and what is left is no result yet: it takes the place of none.
  if (left.length < parts.length)
    return left.some(({ status }) => isOpen(status)) ? 'preliminary' : 'corrected';
  if (all.includes('C') || all.includes('D') || all.includes('W')) return 'corrected';
  return all.some(isOpen) ? 'preliminary' : 'final';
}

/** Deleted, or marked as wrong: for another patient, another specimen, another test. */
const isTakenBack = ({ status }: Part): boolean => status === 'D' || status === 'W';

/** YYYYMMDD[HHMM[SS[.S…]]][±ZZZZ] (chapter 2A, DTM). With an offset the day is that of the service. */
function dayIn(text: string, zone: Zone): Day | undefined {
  const found = /^(\d{4})(\d\d)(\d\d)(?:(\d\d)(\d\d)?(\d\d)?(?:\.\d+)?([+-]\d{4})?)?$/.exec(text);
  if (found === null) return undefined;
  const [, year, month, date, hour, minute = '00', , offset] = found;
  const written = dayWritten(`${year}-${month}-${date}`);
  if (written === undefined || hour === undefined || offset === undefined) return written;
  return dayOfMoment(`${written}T${hour}:${minute}${offset.slice(0, 3)}:${offset.slice(3)}`, zone);
}
