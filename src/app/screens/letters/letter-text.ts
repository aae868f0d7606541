import { turnOf } from '../../../care/custody/turn.ts';
import type { PictureName } from '../../../care/easy-read/pictures.ts';
import { easyWords } from '../../../care/easy-read/words.ts';
import { policyOn, testKindOf } from '../../../care/policy/in-force.ts';
import type { Outcome } from '../../../care/results/facts.ts';
import type { Letter } from '../../../care/results/letter.ts';
import { roundOf } from '../../../care/rounds/round.ts';
import { namesIn } from '../../desk/names.ts';
import type { EasyData } from '../easy-read/easy-data.ts';

const PICTURES: Record<Outcome, PictureName> = {
  positive: 'room',
  negative: 'done',
  void: 'wait',
  inconclusive: 'wait',
  withdrawn: 'wait',
};

/** Everything a letter says, settled once: the screen and the PDF set the same words. */
export interface LetterText {
  readonly title: string;
  readonly service: string;
  readonly madeLine: string;
  readonly foot: string;
  readonly language: string;
  readonly picture: PictureName | undefined;
  readonly sentences: readonly string[];
  readonly lines: readonly { readonly label: string; readonly value: string }[];
}

export function letterText(data: EasyData, letter: Letter): LetterText {
  const { desk, words, easy, person } = data;
  const say = words.easyRead.letter;
  const names = namesIn(desk.home, words.refusals.somebody);
  const common = {
    service: desk.service.name,
    madeLine: words.easyRead.made(desk.now(), names.staff(desk.me)),
    foot: `${say.notDiagnosis} ${say.doctorDecides}`,
  };
  if (letter.reader === 'doctor') {
    return {
      ...{ ...common, title: say.title(person.name), language: 'en-GB', picture: undefined },
      ...{ sentences: [say.notDiagnosis, say.doctorDecides], lines: linesFor(data, letter) },
    };
  }
  const { outcome } = letter.result.data;
  const own = letter.reader === 'person';
  // The language picked for somebody's pictures is theirs; what we write to others is our own.
  const said = own ? easy : easyWords('en-GB');
  const taken = letter.test.taken;
  return {
    ...common,
    title: own ? said.resultTitle(person.called) : say.title(person.called),
    language: said.code,
    picture: PICTURES[outcome],
    sentences: [
      ...said.results[outcome],
      ...(taken === undefined ? [] : [said.when(words.dates.day(taken.at))]),
      own ? said.questions : say.ask,
    ],
    lines: [],
  };
}

function linesFor({ desk, words, person, today }: EasyData, letter: Letter): LetterText['lines'] {
  const say = words.easyRead.letter;
  const { test, result } = letter;
  const turn = test.turn === undefined ? undefined : turnOf(desk.home, test.turn);
  const round = turn && roundOf(desk.home, turn.round);
  const kind = round && testKindOf(policyOn(desk.home, today).policy, round.planned.data.test);
  const line = (label: string, value: string | undefined) => ({
    ...{ label, value: value ?? words.keeping.nothing },
  });
  return [
    line(say.born, person.born && say.doctorBorn(person.born)),
    line(say.test, kind?.name),
    line(say.takenLabel, test.taken && say.taken(test.taken.at)),
    line(say.sitesLabel, say.sites(test.ended.map(({ data }) => words.easyRead.sites[data.site]))),
    line(say.resultLabel, words.outcomes[result.data.outcome]),
    line(say.codeLabel, test.code),
    line(say.laboratory, kind?.laboratory.name),
  ];
}
