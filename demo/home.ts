import type { NewFact } from '../src/care/catalogue.ts';
import type { Home, Service } from '../src/care/home.ts';
import type { DeliveryId, PersonId, RoundId, StaffId, UnitId } from '../src/care/ids.ts';
import type { Code } from '../src/care/kind.ts';
import { dueOn } from '../src/care/rounds/due.ts';
import type { Day, Instant } from '../src/care/time.ts';
import { addDays, dayOf, momentOf } from '../src/care/time.ts';
import type { Written } from '../src/ledger/fact.ts';
import type { DeviceHead } from '../src/ledger/store.ts';
import { setHelpers, setWorksAs } from '../src/procedures/helpers.ts';
import { recordSession } from '../src/procedures/practise.ts';
import { raiseCaution } from '../src/procedures/record-consent.ts';
import type { Chance } from './chance.ts';
import { chanceOf } from './chance.ts';
import { kitCodes } from './kit-codes.ts';
import { pastResults, pastRound } from './past-round.ts';
import type { Desk } from './pen.ts';
import { Pen } from './pen.ts';
import type { DemoPerson } from './people.ts';
import { people, staff } from './people.ts';
import { portrait } from './portraits.ts';

export interface DemoHome {
  /** Who may sign in, and with what. Printed at start. */
  readonly staff: readonly {
    readonly id: StaffId;
    readonly name: string;
    readonly role: string;
    readonly pin: string;
  }[];
  readonly facts: readonly Written[];
  readonly device: DeviceHead;
  readonly home: Home;
}

/** The invented home as it stands at seven in the morning of `now`'s day. */
export function demoHome(
  service: Service,
  desk: Omit<Desk, 'draw' | 'salt'>,
  {
    seed,
    now,
    policyDigest,
  }: { readonly seed: number; readonly now: Instant; readonly policyDigest: string },
): DemoHome {
  const chance = chanceOf(seed);
  const today = dayOf(now, service.zone);
  const start = momentOf(addDays(today, -40), '09:00', service.zone);
  const pen = new Pen(
    service,
    { ...desk, draw: chance.id, salt: () => chance.bytes(16) },
    { now: start, by: 'marenholt1' as StaffId },
  );
  writeStaff(pen, today);
  writePolicy(pen, today, policyDigest);
  for (const person of people) writePerson(pen, person, today);
  const codes = kitCodes(chance, 160);
  writeKits(pen, today, codes);
  const agenda = [...practice(today), ...pastRounds({ today, chance, codes })];
  // One tablet writes, so it writes in the order in which things happened.
  const inOrder = agenda.sort((a, b) =>
    a.on === b.on ? order(a.time, b.time) : order(a.on, b.on),
  );
  for (const { on, time, happens } of inOrder) {
    pen.now = momentOf(on, time, service.zone);
    happens(pen);
  }
  // Last of all: what chance drew for everything before stays as it was.
  writeHelpers(pen, today);
  return {
    staff: staff.map(({ id, name, role, pin }) => ({ id: id as StaffId, name, role, pin })),
    facts: pen.written,
    device: pen.device,
    home: pen.home,
  };
}

function writeStaff(pen: Pen, today: Day): void {
  for (const { id, name, role, swabs, records } of staff) {
    const who = id as StaffId;
    pen.write({
      kind: 'staff.described',
      data: { staff: who, about: 'name' },
      private: { value: name },
    });
    pen.write({ kind: 'staff.role', data: { staff: who, role } });
    const skills = [
      ['swab', swabs],
      ['record', records],
    ] as const;
    for (const [skill, days] of skills) {
      pen.write({
        kind: 'staff.competence',
        data: { staff: who, skill, until: addDays(today, days) },
      });
    }
  }
}

const writePolicy = (pen: Pen, today: Day, digest: string) =>
  pen.write({
    kind: 'policy.confirmed',
    data: { policy: 'windlestraw-house', version: 1, digest, from: addDays(today, -40) },
  });

function writePerson(pen: Pen, given: DemoPerson, today: Day): void {
  const person = given.id as PersonId;
  const fields = {
    name: given.name,
    called: given.called,
    born: given.born,
    room: given.room,
    photo: portrait(given.face),
  };
  for (const [about, value] of Object.entries(fields)) {
    pen.write({
      kind: 'person.described',
      data: { person, about: about as 'name' },
      private: { value },
    });
  }
  placeIn(pen, person, given.unit);
  pen.write({
    kind: 'consent.decided',
    data: {
      ...{ person, test: 'respiratory', authority: given.authority },
      ...{ from: addDays(today, -39), until: addDays(today, -given.decisionEndedDaysAgo) },
    },
    private: { reason: REASONS[given.authority] ?? given.authority },
  });
  for (const [about, value] of Object.entries(given.plan)) {
    pen.write({
      kind: 'support.described',
      data: { person, about: about as 'helps' },
      private: { value },
    });
  }
  pen.write({ kind: 'support.reviewed', data: { person, next: addDays(today, 120) } });
  const { sites, identity } = given;
  const selfSwab = given.called === 'Lin';
  pen.write({ kind: 'support.ways', data: { person, sites, identity, selfSwab } });
  if (identity === 'face') knownBy(pen, person);
  if (given.caution !== undefined) caution(pen, person, given.caution);
}

/** Whom people want for a swab, and what some colleagues said of themselves for that. */
function writeHelpers(pen: Pen, today: Day): void {
  pen.now = momentOf(addDays(today, -1), '15:00', pen.home.service.zone);
  for (const { id, helpers } of people) {
    if (helpers === undefined) continue;
    const { wanted = [], unwanted = [], ...said } = helpers;
    const wish = {
      ...{ ...said, person: id as PersonId },
      ...{ wanted: wanted as StaffId[], unwanted: unwanted as StaffId[] },
    };
    pen.do(setHelpers(pen.home, wish, pen.doing));
  }
  const writer = pen.by;
  for (const { id, worksAs: as } of staff) {
    if (as === undefined) continue;
    pen.by = id as StaffId;
    pen.do(setWorksAs(pen.home, { staff: pen.by, as }, pen.doing));
  }
  pen.by = writer;
}

const REASONS: Partial<Record<DemoPerson['authority'], string>> = {
  'asks-each-time': 'Understands what the swab is for and decides each time. Ask.',
  'best-interests':
    'Meeting with sister, key worker and doctor. Least restrictive way agreed. Any distress ends it.',
  attorney: 'Attorney for health and welfare agreed. The sealed document was seen.',
  deputy: 'Deputy agreed. The order was seen.',
  refuses: 'Has said no, and means it.',
};

function placeIn(pen: Pen, person: PersonId, name: string): void {
  const unit = (name === 'Garden side' ? 'gardenside' : 'hillside') as UnitId;
  if (pen.home.shelves.get('unit')?.has(unit) !== true) {
    pen.write({ kind: 'unit.described', data: { unit }, private: { value: name } });
  }
  pen.write({ kind: 'person.placed', data: { person, unit } });
}

/** Everybody but the two newest colleagues knows those who cannot say who they are. */
function knownBy(pen: Pen, person: PersonId): void {
  for (const { id } of staff.slice(0, -2)) {
    pen.write({ kind: 'staff.knows', data: { staff: id as StaffId, person, knows: true } });
  }
}

function caution(pen: Pen, person: PersonId, given: NonNullable<DemoPerson['caution']>): void {
  const [raised] = pen.do(raiseCaution({ person, caution: given.caution, note: given.note }));
  if (!given.answered || raised === undefined) return;
  pen.write({
    kind: 'caution.answered',
    data: { person, caution: raised.id, answer: 'go-ahead' },
    private: {
      clinician: 'The surgery, duty doctor',
      words: 'A swab is fine. Stop if it bleeds, and ring us.',
    },
  });
}

/** Something that happened on one of the last weeks' days. */
interface Past {
  readonly on: Day;
  readonly time: string;
  readonly happens: (pen: Pen) => void;
}
const order = (a: string, b: string): number => (a < b ? -1 : Number(a > b));

/** Two people at practice: one far on, one who was upset lately. Fourteen sessions: enough to forecast. */
function practice(today: Day): Past[] {
  const climbs = {
    tamsinoake4: ['done', 'done', 'not-yet', 'done', 'done', 'distressed', 'done', 'not-yet'],
    hesperlund7: ['done', 'not-yet', 'done', 'done', 'distressed', 'done'],
  } as const;
  return Object.entries(climbs).flatMap(([id, ends]): Past[] => {
    const person = id as PersonId;
    return [
      {
        ...{ on: addDays(today, -16), time: '16:30' },
        happens: (pen) =>
          pen.write({ kind: 'practice.asked', data: { person, wanted: true, from: 'picture' } }),
      },
      ...ends.map((end, i) => ({
        ...{ on: addDays(today, i - 12), time: '16:30' },
        happens: (pen: Pen) =>
          pen.do(recordSession(pen.home, { person, end, endedWell: true, minutes: 6 }, pen.doing)),
      })),
    ];
  });
}

const SHORT = 14;

/** Two lots: a few kits that end soon, which a round should use first, and plenty that do not. */
function writeKits(pen: Pen, today: Day, codes: readonly Code[]): void {
  pen.now = momentOf(addDays(today, -38), '11:00', pen.home.service.zone);
  const used = codes.length - 60;
  deliver(pen, { lot: 'WS-0391', expires: addDays(today, 90), codes: codes.slice(0, used), today });
  deliver(pen, {
    lot: 'WS-0417',
    expires: addDays(today, 4),
    codes: codes.slice(used, used + SHORT),
    today,
  });
  deliver(pen, {
    lot: 'WS-0622',
    expires: addDays(today, 240),
    codes: codes.slice(used + SHORT),
    today,
  });
  for (const [item, count] of [
    ['gloves', 240],
    ['aprons', 200],
    ['masks', 60],
    ['eye-protection', 8],
  ] as const) {
    pen.write({ kind: 'ppe.counted', data: { item, count, on: addDays(today, -1) } });
  }
}

function deliver(
  pen: Pen,
  { lot, expires, codes, today }: { lot: string; expires: Day; codes: readonly Code[]; today: Day },
): void {
  const delivery = pen.doing.draw() as DeliveryId;
  const kitKind = 'single-swab';
  const facts: NewFact[] = [
    {
      kind: 'kits.delivered',
      data: { delivery, kitKind, lot, expires, count: codes.length, on: addDays(today, -38) },
    },
    { kind: 'kits.unpacked', data: { delivery, kitKind, codes: [...codes] } },
  ];
  for (const fact of facts) pen.write(fact);
}

/** Three weekly rounds, each with its small troubles, and one swab whose result has not come. */
function pastRounds({
  today,
  chance,
  codes,
}: {
  today: Day;
  chance: Chance;
  codes: readonly Code[];
}): Past[] {
  const fresh = [...codes];
  const next = () => {
    const code = fresh.shift();
    if (code === undefined) throw new Error('the demo ran out of kits');
    return code;
  };
  const jory = 'joryfell014' as PersonId;
  const dueThen = (pen: Pen, on: Day) =>
    dueOn(pen.home, { on, test: 'respiratory' }).map((line) => line.person.id);
  const weekly = [21, 14, 7].flatMap((ago): Past[] => {
    const on = addDays(today, -ago);
    const leftOff = ago === 7 ? [jory] : [];
    let round: RoundId | undefined;
    return [
      {
        ...{ on, time: '09:10' },
        happens: (pen) => {
          const people = dueThen(pen, on).filter((person) => !leftOff.includes(person));
          round = pastRound(pen, { on, people, chance, next, leftOff, ends: endsOf(ago) });
        },
      },
      {
        ...{ on: addDays(on, 1), time: '11:40' },
        happens: (pen) => {
          if (round !== undefined) pastResults(pen, round, addDays(on, 1));
        },
      },
    ];
  });
  const on = addDays(today, -4);
  return [
    ...weekly,
    {
      ...{ on, time: '08:10' },
      happens: (pen) => {
        pen.write({
          kind: 'symptoms.noticed',
          data: { person: jory, on, signs: ['cough', 'tired'] },
          private: { note: 'Since the night.' },
        });
        const leftOff = dueThen(pen, on).filter((person) => person !== jory);
        pastRound(pen, { on, people: [jory], chance, next, ends: {}, leftOff });
      },
    },
  ];
}

type Ends = Parameters<typeof pastRound>[1]['ends'];
const endsOf = (ago: number): Ends => {
  const [bram, fenn, ismay] = ['bramhollow5', 'fennharrow9', 'ismaythorn6'] as PersonId[];
  if (bram === undefined || fenn === undefined || ismay === undefined) return {};
  if (ago === 21) return { [fenn]: 'stopped' };
  return ago === 14 ? { [bram]: 'declined' } : { [ismay]: 'leak' };
};
