import { useState } from 'preact/hooks';
import { isOpen, turnsWith } from '../../../care/custody/person-turns.ts';
import type { Turn } from '../../../care/custody/turn.ts';
import type { Card, ForWhom } from '../../../care/easy-read/strip.ts';
import { stripFor } from '../../../care/easy-read/strip.ts';
import type { EasyLanguage, EasyWords } from '../../../care/easy-read/words.ts';
import { easyWords } from '../../../care/easy-read/words.ts';
import type { PersonId, StaffId } from '../../../care/ids.ts';
import { policyOn } from '../../../care/policy/in-force.ts';
import { rounds } from '../../../care/rounds/round.ts';
import type { Member } from '../../../care/staff/member.ts';
import { memberOf } from '../../../care/staff/member.ts';
import { sitesOn } from '../../../care/support/plan.ts';
import type { PersonData } from '../person/person-data.ts';
import { usePerson } from '../person/person-data.ts';

export interface EasyData extends PersonData {
  readonly easy: EasyWords;
  readonly whom: ForWhom;
  readonly cards: readonly Card[];
  readonly staff: readonly Member[];
  /** The turn that the person may stop from their own picture. */
  readonly turn: Turn | undefined;
  readonly language: EasyLanguage;
  readonly setLanguage: (language: EasyLanguage | '') => void;
}

/** The last language that was picked, while the app is open. */
let picked: EasyLanguage = 'en-GB';

export function useEasy(id: PersonId): EasyData {
  const data = usePerson(id);
  const [language, setLanguage] = useState(picked);
  const { desk, plan, today } = data;
  const { tests } = policyOn(desk.home, today).policy;
  const turn = turnsWith(desk.home, id).findLast(isOpen);
  const staff = pairOf(data, turn).map((each) => memberOf(desk.home, each));
  const whom: ForWhom = {
    throat: sitesOn(plan, today) === 'throat-and-nose',
    selfSwab: plan.selfSwab,
    reward: plan.text('reward'),
    helps: plan.text('helps'),
    stopSigns: plan.text('stop-signs'),
    staff: staff.map(({ called }) => called).filter((called) => called !== ''),
    days: Math.max(1, ...tests.map(({ resultHours }) => Math.ceil(resultHours.value / 24))),
  };
  return {
    ...data,
    ...{ easy: easyWords(language), whom, cards: stripFor(whom), staff, turn, language },
    setLanguage: (given) => {
      if (given === '') return;
      picked = given;
      setLanguage(given);
    },
  };
}

/** Who comes: the pair of the open turn, else of the next round; nobody is named where none is planned. */
function pairOf({ desk, today }: PersonData, turn: Turn | undefined): readonly StaffId[] {
  const planned = rounds(desk.home)
    .map((round) => round.planned.data)
    .filter(({ day }) => day >= today)
    .sort((a, b) => (a.day < b.day ? -1 : 1))[0];
  const pair = turn?.pair ?? planned;
  return pair === undefined ? [] : [...new Set([pair.swabber, pair.recorder])];
}
