import { personOf } from '../../../care/people/person.ts';
import type { WireOf } from '../../../care/rounds/frame.ts';
import { beadNames } from '../../../care/rounds/frame.ts';
import type { Round } from '../../../care/rounds/round.ts';
import { memberOf } from '../../../care/staff/member.ts';
import type { Desk } from '../../desk/desk.ts';
import type { FrameRowData } from '../../pieces/frame/frame-data.ts';
import type { Words } from '../../words/en.ts';
import { paths, to } from '../paths.ts';

/** One row of the tally frame for each wire: name, a word on how it stands, the beads. */
export const rowsOf = (
  desk: Desk,
  words: Words,
  { round, wires }: { round: Round; wires: readonly WireOf[] },
): FrameRowData[] =>
  wires.map((wire) => ({
    key: wire.person,
    name: personOf(desk.home, wire.person).called,
    note: noteOf(desk, words, wire),
    href: to(paths.turn(round.id, wire.person)),
    current: wire.so === 'in-turn' && wire.turn?.device === desk.device,
    beads: beadNames.map((name) => wire.beads[name]),
  }));

function noteOf(desk: Desk, words: Words, { so, turn, test }: WireOf): string {
  const say = words.rounds.so;
  switch (so) {
    case 'taken':
      return takenNote(words, test?.taken);
    case 'in-turn': {
      const pair = turn?.pair;
      const names = [pair?.swabber, pair?.recorder].flatMap((id) =>
        id === undefined ? [] : memberOf(desk.home, id).called,
      );
      return say['in-turn'](names.join(', '));
    }
    default:
      return say[so];
  }
}

type Taken = NonNullable<WireOf['test']>['taken'];

function takenNote({ dates, rounds }: Words, taken: Taken): string {
  if (taken === undefined) return '';
  const throat = taken.data.sites.some(({ site }) => site === 'throat');
  const how =
    taken.data.taker === 'person'
      ? rounds.siteShort.self
      : rounds.siteShort[throat ? 'throat' : 'both'];
  return `${dates.time(taken.at)}, ${how}`;
}
