import type { JSX } from 'preact';
import type { Role } from '../../../care/staff/facts.ts';
import { roles } from '../../../care/staff/facts.ts';
import { Choice } from '../../pieces/form/choice.tsx';
import { useAllWords } from '../../words/use-all-words.ts';

export interface JobAskProps {
  /** A word for a job that stands in the list. */
  readonly word: string;
  readonly value: Role | undefined;
  readonly problem: string | undefined;
  readonly onValue: (role: Role) => void;
}

/** A service's own word for a job gives no rights until a manager says which. */
export function JobAsk({ word, value, problem, onValue }: JobAskProps): JSX.Element {
  const words = useAllWords();
  const say = words.importing.map;
  return (
    <Choice<Role>
      id={`job-${word}`}
      label={say.roleAsk(word)}
      hint={say.roleHint}
      problem={problem}
      inline
      value={value ?? ''}
      onValue={(role) => role !== '' && onValue(role)}
      options={roles.map((role) => ({
        value: role,
        label: <span class="capital">{words.roles[role]}</span>,
      }))}
    />
  );
}
