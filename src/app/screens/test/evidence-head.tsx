import type { JSX } from 'preact';
import { personOf } from '../../../care/people/person.ts';
import { testKindOf } from '../../../care/policy/in-force.ts';
import { outcomeOf, registrationOf } from '../../../care/results/outcome.ts';
import type { Story } from '../../../care/rounds/story.ts';
import { useDesk } from '../../desk/desk.ts';
import { DetailList } from '../../pieces/list/detail-list.tsx';
import { CodeText } from '../../pieces/scan/code-text.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { whyOf } from './why-words.ts';

/** Whose test it is and what came of it, in seven lines. */
export function EvidenceHead({ story }: { readonly story: Story }): JSX.Element {
  const { home } = useDesk();
  const words = useAllWords();
  const say = words.testPage.evidence;
  const { test, turn, round, on } = story;
  const person = personOf(home, turn.person);
  const kind = round && testKindOf(story.policy.policy, round.planned.data.test);
  const { registered } = registrationOf(home, test.id);
  const outcome = outcomeOf(home, test.id);
  const result =
    outcome.state === 'known'
      ? `${words.outcomes[outcome.result.data.outcome]}, ${words.dates.date(outcome.result.data.reported)}`
      : outcome.state === 'waiting'
        ? say.noResult
        : words.record.outcome[outcome.state];
  return (
    <DetailList
      details={[
        { key: 'person', label: say.person, value: person.name || words.refusals.somebody },
        {
          key: 'born',
          label: say.born,
          value: person.born === undefined ? '' : words.dates.date(person.born),
        },
        {
          key: 'test',
          label: say.test,
          value: `${kind?.name ?? ''}, ${words.dates.date(on)}`,
        },
        {
          key: 'code',
          label: say.code,
          value: test.code === undefined ? say.noCode : <CodeText code={test.code} />,
        },
        {
          key: 'reference',
          label: say.reference,
          value: registered?.data.reference ?? say.noReference,
        },
        { key: 'result', label: say.result, value: <b>{result}</b> },
        { key: 'rules', label: say.rules, value: whyOf(home, story, words) },
      ]}
    />
  );
}
