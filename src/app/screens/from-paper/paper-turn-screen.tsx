import type { JSX } from 'preact';
import type { PersonId, RoundId } from '../../../care/ids.ts';
import { namesakes, personOf } from '../../../care/people/person.ts';
import { roundOf } from '../../../care/rounds/round.ts';
import { useDesk } from '../../desk/desk.ts';
import { useForm } from '../../keeping/use-form.ts';
import { Notice } from '../../pieces/list/notice.tsx';
import { PersonBadge } from '../../pieces/list/person-badge.tsx';
import { useWords } from '../../words/use-words.ts';
import { EmptyPage } from '../empty-page.tsx';
import { PageHead } from '../page-head.tsx';
import { paths } from '../paths.ts';
import { PaperCheck } from './paper-check.tsx';
import { PaperCodes } from './paper-codes.tsx';
import { emptyEntry } from './paper-entry.ts';
import { PaperWhat } from './paper-what.tsx';
import '../record-page.css';

interface PaperTurnProps {
  readonly round: RoundId;
  readonly person: PersonId;
}

/** One line of a run sheet: what it says, the codes in the hand, and read back before it is kept. */
export function PaperTurnScreen({ round: id, person: whose }: PaperTurnProps): JSX.Element {
  const desk = useDesk();
  const words = useWords();
  const say = words.fromPaper;
  const round = roundOf(desk.home, id);
  const person = personOf(desk.home, whose);
  const form = useForm(emptyEntry(round?.planned.data.day ?? ''), {
    title: say.of(person.called),
    back: paths.paper(id),
  });
  if (round === undefined) return <EmptyPage title={words.refusals.unknownPerson} />;
  const alike = namesakes(desk.home, person);
  const { step } = form.value;
  return (
    <>
      <div class="person-head">
        <PersonBadge name={person.name} photo={person.photo} size="large" />
        <PageHead title={say.of(person.name)}>
          <p>{words.roundList.title(round.planned.data.day)}</p>
        </PageHead>
      </div>
      {alike.length > 0 && (
        <Notice kind="look" title={words.record.namesake(alike.map(({ name }) => name))} />
      )}
      {step === 'what' && <PaperWhat form={form} person={person} back={paths.paper(id)} />}
      {step === 'codes' && <PaperCodes form={form} round={round} />}
      {step === 'check' && <PaperCheck form={form} about={{ round: id, person: whose }} />}
    </>
  );
}
