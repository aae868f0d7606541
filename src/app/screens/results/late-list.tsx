import type { JSX } from 'preact';
import { policyOn, testKindOf } from '../../../care/policy/in-force.ts';
import type { Waiting } from '../../../care/results/waiting.ts';
import { elapsed, HOUR } from '../../../care/time.ts';
import { todayOf, useDesk } from '../../desk/desk.ts';
import { namesIn } from '../../desk/names.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Bead } from '../../pieces/frame/bead.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { paths, to } from '../paths.ts';
import { LaboratoryLine } from './laboratory-line.tsx';

/** Results that should have come, under whom to ring and whether they answer. */
export function LateList({ late }: { readonly late: readonly Waiting[] }): JSX.Element {
  const desk = useDesk();
  const words = useAllWords();
  const say = words.results;
  const { home } = desk;
  const now = desk.now();
  const names = namesIn(home, words.refusals.somebody);
  const { policy } = policyOn(home, todayOf(desk));
  const kinds = new Set(late.map(({ swab }) => swab.round?.planned.data.test ?? ''));
  return (
    <>
      {[...kinds].flatMap((id) => {
        const kind = testKindOf(policy, id);
        return kind === undefined ? [] : <LaboratoryLine key={id} kind={kind} />;
      })}
      <ul class="result-list">
        {late.map(({ swab, since, chased, quietUntil }) => {
          const last = chased.at(-1);
          const quiet = quietUntil !== undefined && now < quietUntil;
          const name = names.person(swab.turn.person);
          return (
            <li key={swab.test.id}>
              <Bead state={quiet ? 'hand' : 'look'} />
              <div>
                <p class="result-who">{name}</p>
                <p>
                  {say.since(Math.floor(elapsed(since, now) / HOUR))}{' '}
                  {last !== undefined && say.rang(names.staff(last.by), last.at)}{' '}
                  {quietUntil !== undefined && say.again(quietUntil)}
                </p>
              </div>
              <Button
                href={to(paths.chase(swab.test.id))}
                label={words.parts.about(say.ring, name)}
              >
                {say.ring}
              </Button>
            </li>
          );
        })}
      </ul>
    </>
  );
}
