import type { JSX } from 'preact';
import { testOf } from '../../../care/custody/test.ts';
import type { PersonId, TestId } from '../../../care/ids.ts';
import { personOf } from '../../../care/people/person.ts';
import { outcomeOf } from '../../../care/results/outcome.ts';
import { recordResult } from '../../../procedures/record-result.ts';
import { useDesk } from '../../desk/desk.ts';
import { useAct } from '../../desk/use-act.ts';
import { useGoOn } from '../../keeping/use-go-on.ts';
import { BigButton } from '../../pieces/bedside/big-button.tsx';
import { Button } from '../../pieces/form/button.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { PersonBadge } from '../../pieces/list/person-badge.tsx';
import { CodeText } from '../../pieces/scan/code-text.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { paths } from '../paths.ts';
import { TestWire } from '../test/test-wire.tsx';
import type { At, Entry } from './entry.ts';
import { givenResult } from './entry.ts';
import { StepHead } from './step-head.tsx';

/** Whose it is and what it says, shown back; what is pressed says that it was read aloud. */
export function EnterReadBack({
  at,
  onEntry,
}: {
  readonly at: At<'read-back'>;
  readonly onEntry: (entry: Entry) => void;
}): JSX.Element {
  const desk = useDesk();
  const words = useAllWords();
  const { entry: say, picks } = words.results;
  const { act, problem } = useAct();
  const go = useGoOn();
  const { coded, outcome, reported, second } = at;
  const { named } = coded;

  const keep = async (): Promise<void> => {
    const facts = await act((home, doing) => recordResult(home, givenResult(at), doing));
    if (facts === undefined) return;
    const held = named === undefined || outcomeOf(desk.home, named.test).state !== 'known';
    if (held) onEntry({ step: 'kept' });
    else go(paths.act(named.test));
  };

  return (
    <>
      <StepHead title={say.readBack} />
      {named === undefined ? (
        <p class="entry-says">{say.saysCode(picks[outcome])}</p>
      ) : (
        <Whose test={named.test} person={named.person} says={picks[outcome]} />
      )}
      <p>
        {say.dated(reported)} {named !== undefined && say.matched[second?.is ?? 'none']}
      </p>
      <p class="entry-code">
        <CodeText code={coded.code} />
      </p>
      <div role="alert">{problem !== undefined && <Notice kind="stop" title={problem} />}</div>
      <div class="entry-press">
        <BigButton step="read-back" now={desk.monotonic} onPress={() => void keep()}>
          {say.right}
        </BigButton>
        <Button icon="back" onPress={() => onEntry({ step: 'code' })}>
          {say.wrong}
        </Button>
      </div>
    </>
  );
}

function Whose({
  test: id,
  person: whose,
  says,
}: {
  readonly test: TestId;
  readonly person: PersonId;
  readonly says: string;
}): JSX.Element {
  const { home } = useDesk();
  const { entry: say } = useAllWords().results;
  const person = personOf(home, whose);
  return (
    <>
      <div class="entry-who">
        <PersonBadge name={person.called} photo={person.photo} size="large" />
        <p class="entry-says">{say.says(person.name, says)}</p>
      </div>
      <TestWire test={testOf(home, id)} />
    </>
  );
}
