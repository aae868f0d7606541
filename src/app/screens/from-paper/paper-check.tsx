import type { JSX } from 'preact';
import type { PersonId, RoundId } from '../../../care/ids.ts';
import { writeFromPaper } from '../../../procedures/write-from-paper.ts';
import { useDesk } from '../../desk/desk.ts';
import { namesIn } from '../../desk/names.ts';
import { KeepForm } from '../../keeping/keep-form.tsx';
import type { FormOf } from '../../keeping/use-form.ts';
import { Button } from '../../pieces/form/button.tsx';
import { DetailList } from '../../pieces/list/detail-list.tsx';
import { CodeText } from '../../pieces/scan/code-text.tsx';
import { useWords } from '../../words/use-words.ts';
import { StepHead } from '../new-result/step-head.tsx';
import type { PaperEntry } from './paper-entry.ts';
import { hasKit, placesFor, turnIn } from './paper-entry.ts';

interface PaperCheckProps {
  readonly form: FormOf<PaperEntry>;
  readonly about: { readonly round: RoundId; readonly person: PersonId };
}

/** All of it, to be read against the paper. Nothing is kept before that. */
export function PaperCheck({ form, about }: PaperCheckProps): JSX.Element {
  const desk = useDesk();
  const words = useWords();
  const say = words.fromPaper;
  const { value, set, keep } = form;
  const { zone } = desk.home.service;
  const turn = turnIn(value, { ...about, zone });

  const onKeep = async (): Promise<void> => {
    if (turn !== undefined) {
      await form.submit([], (home, doing) => writeFromPaper(home, turn, doing));
    }
  };

  return (
    <>
      <StepHead title={say.check} />
      <Typed entry={value} happened={turn?.happened} />
      <KeepForm
        keep={keep}
        onKeep={onKeep}
        label={words.results.entry.right}
        beside={
          <Button icon="back" onPress={() => set({ step: 'what', codes: {} })}>
            {say.backToPaper}
          </Button>
        }
      >
        <p class="soft">{say.checkWhy}</p>
      </KeepForm>
    </>
  );
}

function Typed({
  entry,
  happened,
}: {
  readonly entry: PaperEntry;
  readonly happened: string | undefined;
}): JSX.Element {
  const { home } = useDesk();
  const words = useWords();
  const say = words.fromPaper;
  const names = namesIn(home, words.refusals.somebody);
  const { end, knew, saidYes, sites, codes } = entry;
  const staff = (id: PaperEntry['swabber']): string => (id === '' ? '' : names.staff(id));
  const details = [
    { key: 'end', label: say.what, value: end === '' ? '' : say.ends[end] },
    {
      key: 'when',
      label: say.when,
      value: happened === undefined ? '' : words.dates.dayTime(happened),
    },
    { key: 'swabber', label: say.swabber, value: staff(entry.swabber) },
    { key: 'recorder', label: say.recorder, value: staff(entry.recorder) },
    { key: 'wrote', label: say.wrote, value: staff(entry.wrote) },
    ...(knew === '' ? [] : [{ key: 'knew', label: say.knew, value: say.ways[knew] }]),
    ...(saidYes === ''
      ? []
      : [
          {
            key: 'yes',
            label: say.saidYes,
            value: saidYes === 'yes' ? say.yesSaid : say.ways.unsaid,
          },
        ]),
    ...(sites === '' ? [] : [{ key: 'sites', label: say.sites, value: say.siteNames[sites] }]),
    ...(hasKit(entry) ? placesFor(entry) : []).map((place) => {
      const read = codes[place];
      const shown =
        read === undefined || read === 'not-here' ? say.notRead : <CodeText code={read.code} />;
      return { key: place, label: say.codeOn[place], value: shown };
    }),
  ];
  return <DetailList details={details} />;
}
