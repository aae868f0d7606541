import type { JSX } from 'preact';
import type { Against } from '../../../care/people/helpers.ts';
import { useDesk } from '../../desk/desk.ts';
import { namesIn } from '../../desk/names.ts';
import { sayAgainst } from '../../desk/say-helpers.ts';
import { Notice } from '../../pieces/list/notice.tsx';
import { useWords } from '../../words/use-words.ts';

/** Says what of people's wishes a pair does not meet. It never stops anybody: they may be asked. */
export function WishNotice({
  against,
}: {
  readonly against: readonly Against[];
}): JSX.Element | null {
  const { home } = useDesk();
  const words = useWords();
  if (against.length === 0) return null;
  const names = namesIn(home, words.refusals.somebody);
  const said = against.map((each) => sayAgainst(each, words, names));
  // Somebody else would have been liked better: worth knowing, and nothing goes against anybody.
  const mild = against.every((each) => each.against === 'wanted');
  return (
    <Notice kind={mild ? 'note' : 'look'} title={mild ? said.join(' ') : words.wishes.title}>
      {!mild && said.join(' ')}
    </Notice>
  );
}
