import * as v from 'valibot';
import { boxId, personId, roundId, staffId, testId } from '../ids.ts';
import { count, kind, line, replaces, word } from '../kind.ts';
import { ruleIds } from '../policy/rules.ts';
import { day, instant } from '../time.ts';

const listed = v.strictObject({
  person: personId,
  /** The due rule that put them here, or `asked-for` when a person chose to. */
  why: v.picklist([...ruleIds, 'asked-for']),
  /** When the plan has them, and with whom: an intention, which the turn itself may differ from. */
  at: v.exactOptional(instant),
  swabber: v.exactOptional(staffId),
  recorder: v.exactOptional(staffId),
});
const leftOff = v.strictObject({
  person: personId,
  why: v.picklist(['away', 'unwell', 'asked-not-to', 'another-day', 'not-ready', 'other']),
});

export const roundFacts = {
  'round.planned': kind({
    data: {
      round: roundId,
      day,
      test: word,
      kitKind: word,
      courier: instant,
      packMinutes: v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(480)),
      swabber: staffId,
      recorder: staffId,
      replaces,
    },
    files: (data) => [['round', data.round]],
  }),
  /** Who is on the round, in order, and who was due but left off and why. */
  'round.listed': kind({
    data: {
      round: roundId,
      people: v.pipe(v.array(listed), v.maxLength(120)),
      leftOff: v.pipe(v.array(leftOff), v.maxLength(120)),
      replaces,
    },
    files: (data) => [
      ['round', data.round],
      ...data.people.map((each) => ['person', each.person] as const),
    ],
  }),
  'box.started': kind({
    data: { box: boxId, round: roundId },
    files: (data) => [
      ['box', data.box],
      ['round', data.round],
    ],
  }),
  /** The box is shut on exactly these tests. Anything else that turns up in it is a finding (in-box.ts). */
  'box.closed': kind({
    data: { box: boxId, round: roundId, members: v.array(testId), wiped: v.boolean(), replaces },
    files: (data) => [
      ['box', data.box],
      ['round', data.round],
    ],
  }),
  'box.handed': kind({
    data: { box: boxId, round: roundId, count, seal: word, replaces },
    private: { courier: line },
    files: (data) => [
      ['box', data.box],
      ['round', data.round],
    ],
  }),
  'courier.missed': kind({
    data: { round: roundId, box: v.exactOptional(boxId), due: instant, replaces },
    files: (data) => [['round', data.round]],
  }),
  /** A collection was booked again; somebody has it in hand. */
  'courier.rebooked': kind({
    data: { round: roundId, due: instant, who: staffId, replaces },
    files: (data) => [['round', data.round]],
  }),
  /** The round tallies: every kit opened is packed or spoiled. Lists exactly what it covers. */
  'round.closed': kind({
    data: {
      round: roundId,
      packed: v.array(testId),
      spoiled: v.array(testId),
      replaces,
    },
    files: (data) => [['round', data.round]],
  }),
};
