import { codeUse } from '../../care/custody/code.ts';
import type { PersonId, RoundId, TurnId } from '../../care/ids.ts';
import type { Code } from '../../care/kind.ts';
import { everybody } from '../../care/people/person.ts';
import { roundOf, rounds } from '../../care/rounds/round.ts';
import { stockOf } from '../../care/supplies/stock.ts';
import { momentOf } from '../../care/time.ts';
import { handOver } from '../../procedures/hand-over.ts';
import { closeBox, closeRound, openBox, packBag } from '../../procedures/pack.ts';
import { planRound } from '../../procedures/plan-round.ts';
import { decideTouch } from '../../procedures/take-swab/decide.ts';
import type { Touch } from '../../procedures/take-swab/touch.ts';
import { todayOf } from '../desk/desk.ts';
import type { DeskStore } from '../desk/use-desk-store.ts';

/** How a turn goes when nobody is at the bedside to take it. */
export type Going = 'taken' | 'declined' | 'stopped';

/** What hands would do, done through the same procedures, so that later screens have something to show. */
export function standIn(store: DeskStore) {
  const act = async (decide: Parameters<ReturnType<DeskStore['desk']>['act']>[0]) => {
    const acted = await store.desk().act(decide);
    if (!acted.ok) throw new Error(`the stand-in was refused: ${JSON.stringify(acted)}`);
    return acted.facts;
  };
  const touch = (given: Touch, turn?: TurnId) =>
    act((home, doing) => decideTouch(home, turn === undefined ? given : { ...given, turn }, doing));

  /** One turn from gloves to thanks. Resolves to the code of its kit, where one was opened. */
  async function swab(
    round: RoundId,
    person: PersonId,
    going: Going = 'taken',
  ): Promise<Code | undefined> {
    const { swabber, recorder } = planned(round);
    const [opened] = await touch({ do: 'start', round, person, swabber, recorder });
    if (opened?.kind !== 'turn.opened') throw new Error('no turn');
    const { turn } = opened.data;
    const say = (given: Touch) => touch(given, turn);
    await say({ do: 'identify', chosen: person });
    await say({ do: 'willing', answer: going === 'declined' ? 'no' : 'yes' });
    if (going === 'declined') return undefined;
    const code = freshCode(planned(round).kitKind);
    await say({ do: 'open-kit', code, how: 'scanned' });
    await say({ do: 'contents-right' });
    await say({ do: 'read-label', code, how: 'scanned' });
    await say({ do: 'read-label', code, how: 'scanned' });
    await say({ do: 'start-site' });
    if (going === 'stopped') await say({ do: 'stop' });
    else {
      await say({ do: 'next-site', ms: 10_400 });
      await say({ do: 'out', ms: 12_200 });
      await say({ do: 'lid-dry' });
      await say({ do: 'sealed' });
    }
    await say({ do: 'finish' });
    return code;
  }

  const planned = (round: RoundId) => {
    const found = roundOf(store.desk().home, round);
    if (found === undefined) throw new Error('no such round');
    return found.planned.data;
  };

  /** Kits are taken as they lie: soonest expiry first. */
  function freshCode(kitKind: string): Code {
    const [first] = freeCodes(1, kitKind);
    if (first === undefined) throw new Error('no kits');
    return first;
  }

  function freeCodes(count: number, kitKind = 'single-swab'): Code[] {
    const { home } = store.desk();
    const { lotOfCode } = stockOf(home, kitKind);
    return [...lotOfCode]
      .filter(([code]) => codeUse(home, code).use === 'free')
      .sort(([, a], [, b]) => (a.expires < b.expires ? -1 : 1))
      .slice(0, count)
      .map(([code]) => code);
  }

  /** A round today with these people, everybody else left to another day. */
  async function plan(people: readonly PersonId[], courier = '14:30'): Promise<RoundId> {
    const desk = store.desk();
    const day = todayOf(desk);
    const leftOff = everybody(desk.home)
      .map(({ id }) => id)
      .filter((id) => !people.includes(id))
      .map((person) => ({ person, why: 'another-day' as const }));
    const [first] = await act((home, doing) =>
      planRound(
        home,
        {
          ...{ day, people, leftOff, test: 'respiratory', kitKind: 'single-swab', packMinutes: 20 },
          ...{ swabber: 'piadell004' as never, recorder: 'jonahmarsh' as never },
          courier: momentOf(day, courier, home.service.zone),
        },
        doing,
      ),
    );
    if (first?.kind !== 'round.planned') throw new Error('no round');
    return first.data.round;
  }

  const pack = (round: RoundId, code: Code) =>
    act((home, doing) => packBag(home, { round, code, how: 'scanned' }, doing));

  /** A whole round, swabbed, packed, closed and handed over. Resolves to the codes, in order. */
  async function send(people: readonly PersonId[]): Promise<{ round: RoundId; codes: Code[] }> {
    const round = await plan(people);
    const codes: Code[] = [];
    for (const person of people) {
      const code = await swab(round, person);
      if (code !== undefined) codes.push(code);
    }
    for (const code of codes) await pack(round, code);
    const found = roundOf(store.desk().home, round);
    const box = found && openBox(found)?.id;
    if (box === undefined) throw new Error('no box');
    await act((home) => closeBox(home, { round, wiped: true }));
    await act((home) => closeRound(home, round));
    await act((home) =>
      handOver(home, { round, box, courier: 'The afternoon van', count: codes.length, seal: 'S1' }),
    );
    return { round, codes };
  }

  const newestRound = () => rounds(store.desk().home)[0]?.id;

  return { swab, plan, pack, send, newestRound, freeCodes };
}
