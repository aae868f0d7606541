import type { JSX } from 'preact';
import { turnOf } from '../../../care/custody/turn.ts';
import type { PictureName } from '../../../care/easy-read/pictures.ts';
import type { PersonId, TestId } from '../../../care/ids.ts';
import { policyOn, testKindOf } from '../../../care/policy/in-force.ts';
import type { Outcome } from '../../../care/results/facts.ts';
import type { Letter } from '../../../care/results/letter.ts';
import { letterFor } from '../../../care/results/letter.ts';
import { roundOf } from '../../../care/rounds/round.ts';
import type { Reader } from '../../../care/support/facts.ts';
import { readers } from '../../../care/support/facts.ts';
import { makeLetter } from '../../../procedures/note-after.ts';
import { namesIn } from '../../desk/names.ts';
import { sayRefusal } from '../../desk/say-refusal.ts';
import { useAct } from '../../desk/use-act.ts';
import { Button } from '../../pieces/form/button.tsx';
import { DetailList } from '../../pieces/list/detail-list.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { useAnnounce } from '../../pieces/page/live-region.tsx';
import { PrintSheet } from '../../pieces/print/print-sheet.tsx';
import { Drawing } from '../easy-read/drawing.tsx';
import type { EasyData } from '../easy-read/easy-data.ts';
import { useEasy } from '../easy-read/easy-data.ts';
import { LanguageChoice } from '../easy-read/strip-screen.tsx';
import { PageHead } from '../page-head.tsx';
import { paths, to } from '../paths.ts';
import { PrintRow } from '../print-row.tsx';

interface LetterProps {
  readonly person: PersonId;
  readonly test: TestId;
  readonly reader: string;
}

const readerOf = (text: string): Reader => readers.find((each) => each === text) ?? 'person';

/** A result told on paper: to the person in pictures, to family as agreed, to the doctor in the record's terms. */
export function LetterScreen({ person: id, test, reader: text }: LetterProps): JSX.Element {
  const data = useEasy(id);
  const { desk, words, person } = data;
  const { act, problem } = useAct();
  const announce = useAnnounce();
  const reader = readerOf(text);
  const say = words.easyRead.letter;
  const letter = letterFor(desk.home, { person: id, test, reader });
  const back = (
    <Button icon="back" href={to(paths.person(id))}>
      {words.easyRead.back}
    </Button>
  );
  if (!letter.ok) {
    return (
      <>
        <PageHead title={say.title(person.called)} />
        <Notice kind="look" title={sayRefusal(letter, { words, home: desk.home })} action={back} />
      </>
    );
  }
  const names = namesIn(desk.home, words.refusals.somebody);
  return (
    <>
      <PrintRow>
        <Button
          onPress={() =>
            void act((home) => makeLetter(home, { person: id, test, reader })).then((kept) => {
              if (kept !== undefined) announce(say.kept);
            })
          }
        >
          {say.keep}
        </Button>
        {back}
      </PrintRow>
      {problem !== undefined && <Notice kind="look" title={problem} />}
      {letter.value.retell && <Notice kind="look" title={say.retell} />}
      {reader === 'person' && <LanguageChoice {...data} />}
      {reader === 'person' && !data.easy.checked && (
        <Notice kind="look" title={data.easy.needsReader} />
      )}
      <div lang={reader === 'doctor' ? 'en-GB' : data.language}>
        <PrintSheet
          service={desk.service.name}
          title={
            reader === 'person'
              ? data.easy.resultTitle(person.called)
              : say.title(reader === 'doctor' ? person.name : person.called)
          }
          made={words.easyRead.made(desk.now(), names.staff(desk.me))}
          foot={`${say.notDiagnosis} ${say.doctorDecides}`}
        >
          {reader === 'doctor' ? (
            <ForDoctor {...data} letter={letter.value} />
          ) : (
            <Plain {...data} letter={letter.value} />
          )}
        </PrintSheet>
      </div>
    </>
  );
}

const PICTURES: Record<Outcome, PictureName> = {
  positive: 'room',
  negative: 'done',
  void: 'wait',
  inconclusive: 'wait',
  withdrawn: 'wait',
};

type WithLetter = EasyData & { readonly letter: Letter };

/** The result in one picture and a few short sentences, the same for the person and for family. */
function Plain({ words, easy, letter }: WithLetter): JSX.Element {
  const { outcome } = letter.result.data;
  const say = words.easyRead.letter;
  return (
    <div class="booklet-page">
      <Drawing picture={PICTURES[outcome]} />
      {easy.results[outcome].map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      {letter.test.taken !== undefined && <p>{easy.when(words.dates.day(letter.test.taken.at))}</p>}
      <p>{letter.reader === 'person' ? easy.questions : say.ask}</p>
    </div>
  );
}

function ForDoctor({ desk, words, person, letter, today }: WithLetter): JSX.Element {
  const say = words.easyRead.letter;
  const { test, result } = letter;
  const turn = test.turn === undefined ? undefined : turnOf(desk.home, test.turn);
  const round = turn && roundOf(desk.home, turn.round);
  const { policy } = policyOn(desk.home, today);
  const kind = round && testKindOf(policy, round.planned.data.test);
  const line = (label: string, value: string | undefined) => ({
    ...{ key: label, label, value: value ?? words.keeping.nothing },
  });
  return (
    <>
      <p>
        <b>{say.notDiagnosis}</b> {say.doctorDecides}
      </p>
      <DetailList
        details={[
          line(say.born, person.born && say.doctorBorn(person.born)),
          line(say.test, kind?.name),
          line(say.takenLabel, test.taken && say.taken(test.taken.at)),
          line(
            say.sitesLabel,
            say.sites(test.ended.map(({ data }) => words.easyRead.sites[data.site])),
          ),
          line(say.resultLabel, words.outcomes[result.data.outcome]),
          line(say.codeLabel, test.code),
          line(say.laboratory, kind?.laboratory.name),
        ]}
      />
    </>
  );
}
