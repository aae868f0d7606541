import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { Fact } from '../../../care/catalogue.ts';
import type { StaffId, TestId } from '../../../care/ids.ts';
import type { How } from '../../../care/kind.ts';
import type { Progress } from '../../../care/rounds/progress.ts';
import type { Round } from '../../../care/rounds/round.ts';
import { leakedAtPacking, packBag } from '../../../procedures/pack.ts';
import { useDesk } from '../../desk/desk.ts';
import { namesIn } from '../../desk/names.ts';
import { useAct } from '../../desk/use-act.ts';
import { Button } from '../../pieces/form/button.tsx';
import { ScanField } from '../../pieces/scan/scan-field.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { howOf } from '../how-of.ts';
import { SecondReader } from '../parts/second-reader.tsx';

interface Said {
  readonly leaked: boolean;
  readonly test: TestId;
}

/** One scan a bag, no tap. A bag that leaks is scanned too, so that the right one is closed. */
export function PackScan({
  round,
  progress,
}: {
  readonly round: Round;
  readonly progress: Progress;
}): JSX.Element {
  const { home } = useDesk();
  const words = useAllWords();
  const say = words.packing;
  const { act, problem, refusal } = useAct();
  const [leaking, setLeaking] = useState(false);
  /** The last code that was typed, for a colleague to read too where it looks like another. */
  const [typed, setTyped] = useState<string | undefined>(undefined);
  const near =
    typed !== undefined && refusal?.reason === 'code-near' && refusal.code === typed.trim();
  const [said, setSaid] = useState<Said | undefined>(undefined);
  const names = namesIn(home, words.refusals.somebody);
  const { packed, missing } = progress.tally;

  const read = async (code: string, how: How, second?: StaffId): Promise<void> => {
    setTyped(how === 'scanned' ? undefined : code);
    const scan = { round: round.id, code, how, ...(second !== undefined && { second }) };
    const facts = await act((now, doing) =>
      (leaking ? leakedAtPacking : packBag)(now, scan, doing),
    );
    const test = facts?.flatMap(testIn)[0];
    setSaid(test === undefined ? undefined : { leaked: leaking, test });
    if (test !== undefined) setLeaking(false);
  };

  return (
    <section class="pack-scan" data-leaking={leaking}>
      <p class="pack-lead">{leaking ? say.leakLead : say.lead}</p>
      <ScanField
        key={String(leaking)}
        onCode={(code, way) => void read(code, howOf(way))}
        problem={problem}
      >
        {said !== undefined && problem === undefined && (
          <p class="pack-said">
            {said.leaked ? say.leaked(names.test(said.test)) : say.isIn(names.test(said.test))}
          </p>
        )}
        <p class="pack-count">{say.count(packed.length, packed.length + missing.length)}</p>
      </ScanField>
      {near && (
        <SecondReader
          key={typed}
          code={typed}
          onSecond={(who) => void read(typed, 'typed-twice', who)}
        />
      )}
      <div>
        <Button icon={leaking ? 'back' : 'look'} onPress={() => setLeaking(!leaking)}>
          {leaking ? say.leakBack : say.leaks}
        </Button>
      </div>
    </section>
  );
}

const testIn = (fact: Fact): TestId[] =>
  fact.kind === 'bag.packed' || fact.kind === 'kit.spoiled' ? [fact.data.test] : [];
