import type { JSX } from 'preact';
import { proposalFor } from '../../../care/support/proposal.ts';
import { answerProposal } from '../../../procedures/note-after.ts';
import { useAct } from '../../desk/use-act.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { Part } from '../../pieces/page/part.tsx';
import { paths, to } from '../paths.ts';
import type { PersonData } from './person-data.ts';

/** How it went, and what the plan's next version could say. Only a person puts it in. */
export function ProposalPart({ desk, words, person }: PersonData): JSX.Element {
  const { act, problem } = useAct();
  const { after: say, change } = words.easyRead;
  const proposal = proposalFor(desk.home, person.id);
  const press = <Button href={to(paths.after(person.id))}>{say.press}</Button>;
  if (proposal === undefined) {
    return (
      <Part title={say.title} action={press}>
        <p class="soft">{say.lead}</p>
      </Part>
    );
  }
  const answer = (accept: boolean) =>
    void act((home) =>
      answerProposal(home, { person: person.id, after: proposal.after.id, accept }),
    );
  return (
    <Part title={say.proposed} action={press}>
      {problem !== undefined && <Notice kind="look" title={problem} />}
      <p>{say.proposedLead}</p>
      <ul>
        {proposal.changes.map(({ field, to: text }) => (
          <li key={field}>{change(words.record.plan[field], text)}</li>
        ))}
      </ul>
      <div class="button-row">
        <Button kind="main" onPress={() => answer(true)}>
          {say.accept}
        </Button>
        <Button onPress={() => answer(false)}>{say.leave}</Button>
      </div>
    </Part>
  );
}
