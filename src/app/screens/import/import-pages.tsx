import type { JSX } from 'preact';
import { OnlyFor } from '../../keeping/only-for.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { paths } from '../paths.ts';
import { ImportScreen } from './import-screen.tsx';
import { peopleList, staffList } from './list-kind.ts';

/** A list of people. Anybody who may add one person may bring in many. */
export function ImportPeople(): JSX.Element {
  return <ImportScreen kind={peopleList} />;
}

/** A list of staff gives roles, so a manager brings it in. */
export function ImportStaff(): JSX.Element {
  const { importing } = useAllWords();
  return (
    <OnlyFor role="manager" title={importing.titles.staff} back={paths.staff}>
      <ImportScreen kind={staffList} />
    </OnlyFor>
  );
}
