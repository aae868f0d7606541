import type { JSX } from 'preact';
import { useMemo, useState } from 'preact/hooks';
import type { HouseChance, OneOfUs } from '../../../care/results/house-chance.ts';
import { houseChance } from '../../../care/results/house-chance.ts';
import { todayOf, useDesk } from '../../desk/desk.ts';
import { namesIn } from '../../desk/names.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Choice } from '../../pieces/form/choice.tsx';
import { DataTable } from '../../pieces/list/data-table.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { Part } from '../../pieces/page/part.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { EmptyPage } from '../empty-page.tsx';
import { IconArray } from '../meaning/icon-array.tsx';
import { PageHead } from '../page-head.tsx';
import { paths, to } from '../paths.ts';
import '../meaning/meaning.css';

const levels = ['80', '90', '95', '99'] as const;
type Level = (typeof levels)[number];

/** The chance that a case in the house was missed, and how many more to test. It never passes a home. */
export function HouseScreen(): JSX.Element {
  const desk = useDesk();
  const words = useAllWords();
  const { meaning: say } = words;
  const [level, setLevel] = useState<Level>('95');
  const today = todayOf(desk);
  const found = useMemo(
    () => houseChance(desk.home, today, Number(level) / 100),
    [desk.home, today, level],
  );
  if (found === undefined) {
    return (
      <EmptyPage
        title={say.noPolicy}
        action={<Button href={to(paths.results)}>{words.results.title}</Button>}
      />
    );
  }
  return (
    <>
      <PageHead title={say.houseTitle} />
      <div class="meaning">
        <IconArray share={found.missed} label={say.picture(found.missed)} />
        <div class="meaning-words">
          <p class="meaning-says">{say.houseSentence(found.missed)}</p>
          <p>
            {say.tested(found.tested, found.people.length)}{' '}
            {found.positives.length > 0 && say.positives(found.positives.length)}
          </p>
          <p>{say.findOne(found.findOne)}</p>
        </div>
      </div>
      <Notice kind="look" title={say.houseWhy}>
        {say.apart}
      </Notice>
      <Choice<Level>
        id="wanted"
        label={say.wanted}
        inline
        value={level}
        onValue={(picked) => picked !== '' && setLevel(picked)}
        options={levels.map((value) => ({ value, label: say.wantedOption(Number(value)) }))}
      />
      <p class="meaning-says" role="status">
        {found.more === undefined ? say.notEnough : say.more(found.more)}
      </p>
      <p>{found.inAllForOne === undefined ? say.inAllNever : say.inAll(found.inAllForOne)}</p>
      <People found={found} />
      <p class="field-hint">
        {say.checked(found.simulated)} {say.source}
      </p>
    </>
  );
}

function People({ found }: { readonly found: HouseChance }): JSX.Element {
  const desk = useDesk();
  const words = useAllWords();
  const { meaning: say } = words;
  const names = namesIn(desk.home, words.refusals.somebody);
  // In the order in which to test: without a result first, and of those the likeliest.
  const rows = [...found.people].sort(
    (a, b) => Number(a.not === undefined) - Number(b.not === undefined) || b.after - a.after,
  );
  return (
    <Part title={say.listTitle}>
      <DataTable<OneOfUs>
        caption={<span class="unseen">{say.listCaption}</span>}
        rows={rows}
        rowKey={({ person }) => person}
        columns={[
          {
            key: 'person',
            label: say.columns.person,
            cell: ({ person }) => (
              <a class="row-link" href={to(paths.person(person))}>
                {names.person(person)}
              </a>
            ),
          },
          {
            key: 'why',
            label: say.columns.why,
            cell: ({ not }) => (not === undefined ? say.negative : say.not[not]),
          },
          {
            key: 'before',
            label: say.columns.before,
            number: true,
            cell: ({ before }) => `${(before * 100).toFixed(1)} %`,
          },
          {
            key: 'after',
            label: say.columns.after,
            number: true,
            cell: ({ after }) => `${(after * 100).toFixed(1)} %`,
          },
        ]}
      />
    </Part>
  );
}
