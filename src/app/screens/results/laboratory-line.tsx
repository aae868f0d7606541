import type { JSX } from 'preact';
import type { TestKind } from '../../../care/policy/policy.ts';
import { answering } from '../../../care/results/laboratory.ts';
import { useDesk } from '../../desk/desk.ts';
import { Icon } from '../../pieces/icon/icon.tsx';
import { useAllWords } from '../../words/use-all-words.ts';

/** Whom to ring, the number, and whether anybody answers now. */
export function LaboratoryLine({ kind }: { readonly kind: TestKind }): JSX.Element {
  const desk = useDesk();
  const { laboratory: say } = useAllWords().results;
  const { laboratory } = kind;
  const { name, phone } = laboratory;
  const now = answering(laboratory, desk.now(), desk.home.service.zone);
  return (
    <p class="laboratory" data-open={now.open}>
      <Icon name="clock" />
      <span>
        {now.open
          ? say.open(name, now.until)
          : now.from === undefined
            ? say.never(name)
            : say.opens(name, now.from)}{' '}
        <a href={`tel:${phone.replaceAll(' ', '')}`}>{say.phone(phone)}</a>
      </span>
    </p>
  );
}
