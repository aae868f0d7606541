import type { JSX } from 'preact';
import type { Policy } from '../../../care/policy/policy.ts';
import { Notice } from '../../pieces/list/notice.tsx';
import { useAllWords } from '../../words/use-all-words.ts';

/** What stands above any policy; and loudly, that nobody may work by one that is made up. */
export function PolicyCautions({ policy }: { readonly policy: Policy }): JSX.Element {
  const { policy: say } = useAllWords();
  return (
    <>
      {policy.invented && (
        <div class="policy-invented" role="note">
          <h2>{say.invented}</h2>
          <p>{say.inventedWhy}</p>
        </div>
      )}
      <Notice kind="look" title={say.above}>
        {say.aboveWho}
      </Notice>
    </>
  );
}
