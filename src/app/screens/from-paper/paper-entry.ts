import type { SpoilReason, StopReason } from '../../../care/custody/facts.ts';
import type { PersonId, RoundId, StaffId } from '../../../care/ids.ts';
import type { Zone } from '../../../care/time.ts';
import type { ReadCode } from '../../../procedures/second-person.ts';
import type { PaperEnd, PaperTurn } from '../../../procedures/write-from-paper.ts';
import { missing } from '../../keeping/checks.ts';
import type { FormProblem } from '../../pieces/form/error-summary.tsx';
import type { Words } from '../../words/en.ts';
import type { Moment } from '../parts/moment-field.tsx';
import { instantIn } from '../parts/moment-field.tsx';

export const places = ['record', 'tube', 'bag'] as const;
export type Place = (typeof places)[number];

/** What one line of a run sheet says, as far as it is typed in. Nothing is picked beforehand. */
export interface PaperEntry {
  readonly step: 'what' | 'codes' | 'check';
  readonly name: readonly 'read'[];
  readonly end: PaperEnd | '';
  readonly when: Moment;
  readonly swabber: StaffId | '';
  readonly recorder: StaffId | '';
  readonly wrote: StaffId | '';
  readonly knew: 'birthday' | 'face' | 'unsaid' | '';
  readonly saidYes: 'yes' | 'unsaid' | '';
  readonly sites: 'throat-and-nose' | 'nose-only' | '';
  readonly taker: 'staff' | 'person' | '';
  readonly sealed: readonly 'sealed'[];
  readonly stop: StopReason | '';
  readonly opened: 'yes' | 'no' | '';
  readonly spoil: SpoilReason | '';
  readonly codes: Partial<Record<Place, ReadCode | 'not-here'>>;
}

export const emptyEntry = (day: string): PaperEntry => ({
  ...{ step: 'what', name: [], end: '', when: { day, time: '' } },
  ...{ swabber: '', recorder: '', wrote: '', knew: '', saidYes: '', sites: '', taker: '' },
  ...{ sealed: [], stop: '', opened: '', spoil: '', codes: {} },
});

/** Whether a kit was opened, whatever became of it. */
export const hasKit = ({ end, opened }: PaperEntry): boolean =>
  end === 'taken' || end === 'spoiled' || (end === 'stopped' && opened === 'yes');

/** Where the code has to be read: a tube that is closed for ever is not looked for again. */
export const placesFor = ({ end }: PaperEntry): readonly Place[] =>
  end === 'taken' ? places : ['record'];

/** Everything on the first page that is missing or cannot be. */
export function wrongWith(
  entry: PaperEntry,
  { words, zone, now }: { readonly words: Words; readonly zone: Zone; readonly now: string },
): FormProblem[] {
  const { keeping, fromPaper: say } = words;
  const { end, name, swabber, recorder, wrote, when } = entry;
  const happened = instantIn(when, zone);
  const asked = end === 'asleep' || end === 'away' ? {} : { knew: entry.knew };
  return [
    ...missing({ name }, say.lookAtName),
    ...missing({ end }, keeping.pickOne),
    ...(happened === undefined ? [{ field: 'when', text: say.fillTime }] : []),
    ...(happened !== undefined && happened > now ? [{ field: 'when', text: say.notYet }] : []),
    ...missing({ swabber, recorder, wrote, ...asked, ...pickedFor(entry) }, keeping.pickOne),
    ...(end === 'taken' ? missing({ sealed: entry.sealed }, say.lookAtTube) : []),
  ];
}

/** What has to be picked for this end of a turn, and only for it. */
function pickedFor(entry: PaperEntry): Record<string, string> {
  const { saidYes, sites, taker, opened, spoil } = entry;
  switch (entry.end) {
    case 'taken':
      return { saidYes, sites, taker };
    case 'stopped':
      return { saidYes, opened };
    case 'spoiled':
      return { saidYes, spoil };
    default:
      return {};
  }
}

const codeAt = ({ codes }: PaperEntry, place: Place): ReadCode | undefined => {
  const read = codes[place];
  return read === 'not-here' ? undefined : read;
};

/** The whole entry as the core takes it; undefined while something is missing. */
export function turnIn(
  entry: PaperEntry,
  about: { readonly round: RoundId; readonly person: PersonId; readonly zone: Zone },
): PaperTurn | undefined {
  const { end, swabber, recorder, wrote, knew } = entry;
  const happened = instantIn(entry.when, about.zone);
  if (end === '' || swabber === '' || recorder === '' || wrote === '' || happened === undefined)
    return undefined;
  const { round, person } = about;
  return {
    ...{ round, person, swabber, recorder, wrote, happened, end },
    knew: knew === 'birthday' || knew === 'face' ? knew : undefined,
    saidYes: entry.saidYes === 'yes',
    ...kitIn(entry),
    ...(entry.sites !== '' && { sites: entry.sites }),
    ...(entry.taker !== '' && { taker: entry.taker }),
    ...(entry.stop !== '' && { stop: entry.stop }),
    ...(entry.spoil !== '' && { spoil: entry.spoil }),
  };
}

function kitIn(entry: PaperEntry): Pick<PaperTurn, 'kit'> {
  const record = codeAt(entry, 'record');
  if (!hasKit(entry) || record === undefined) return {};
  const [tube, bag] = [codeAt(entry, 'tube'), codeAt(entry, 'bag')];
  return {
    kit: { record, ...(tube !== undefined && { tube }), ...(bag !== undefined && { bag }) },
  };
}
