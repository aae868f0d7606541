import type { JSX } from 'preact';
import type { RoundId } from '../../../care/ids.ts';
import { personOf } from '../../../care/people/person.ts';
import { frameOf } from '../../../care/rounds/frame.ts';
import { roundOf } from '../../../care/rounds/round.ts';
import { useDesk } from '../../desk/desk.ts';
import { Button } from '../../pieces/form/button.tsx';
import { PersonBadge } from '../../pieces/list/person-badge.tsx';
import { useWords } from '../../words/use-words.ts';
import { EmptyPage } from '../empty-page.tsx';
import { PageHead } from '../page-head.tsx';
import { paths, to } from '../paths.ts';
import { rowsOf } from '../round/round-rows.ts';
import '../record-list.css';

/** Whose line of the run sheet is typed in next, in the order of the sheet. */
export function PaperListScreen({ round: id }: { readonly round: RoundId }): JSX.Element {
  const desk = useDesk();
  const words = useWords();
  const say = words.fromPaper;
  const round = roundOf(desk.home, id);
  if (round === undefined) return <EmptyPage title={words.refusals.unknownPerson} />;
  const wires = frameOf(desk.home, round);
  const rows = rowsOf(desk, words, { round, wires });
  return (
    <>
      <PageHead title={say.title}>
        <p>{words.roundList.title(round.planned.data.day)}</p>
        <p>{say.lead}</p>
      </PageHead>
      <div class="people-list">
        <ul>
          {wires.map(({ person: whose }, at) => {
            const person = personOf(desk.home, whose);
            return (
              <li key={whose} class="person-line">
                <PersonBadge name={person.name} photo={person.photo} />
                <div class="person-line-who">
                  <a href={to(paths.paperTurn(id, whose))}>{person.name}</a>
                  <span class="person-line-place">{rows[at]?.note}</span>
                </div>
              </li>
            );
          })}
        </ul>
      </div>
      <div class="button-row">
        <Button icon="back" href={to(paths.round(id))}>
          {words.turn.toRound}
        </Button>
      </div>
    </>
  );
}
