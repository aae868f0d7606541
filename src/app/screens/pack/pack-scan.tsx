import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { Fact } from '../../../care/catalogue.ts';
import type { TestId } from '../../../care/ids.ts';
import type { Progress } from '../../../care/rounds/progress.ts';
import type { Round } from '../../../care/rounds/round.ts';
import { leakedAtPacking, packBag } from '../../../procedures/pack.ts';
import { useDesk } from '../../desk/desk.ts';
import { namesIn } from '../../desk/names.ts';
import { useAct } from '../../desk/use-act.ts';
import { Button } from '../../pieces/form/button.tsx';
import type { ScanWay } from '../../pieces/scan/scan-field.tsx';
import { ScanField } from '../../pieces/scan/scan-field.tsx';
import { useWords } from '../../words/use-words.ts';
import { howOf } from '../how-of.ts';

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
  const words = useWords();
  const say = words.packing;
  const { act, problem } = useAct();
  const [leaking, setLeaking] = useState(false);
  const [said, setSaid] = useState<Said | undefined>(undefined);
  const names = namesIn(home, words.refusals.somebody);
  const { packed, missing } = progress.tally;

  const read = async (code: string, way: ScanWay): Promise<void> => {
    const facts = await act((now, doing) =>
      leaking
        ? leakedAtPacking(now, { round: round.id, code })
        : packBag(now, { round: round.id, code, how: howOf(way) }, doing),
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
        onCode={(code, way) => void read(code, way)}
        problem={problem}
      >
        {said !== undefined && problem === undefined && (
          <p class="pack-said">
            {said.leaked ? say.leaked(names.test(said.test)) : say.isIn(names.test(said.test))}
          </p>
        )}
        <p class="pack-count">{say.count(packed.length, packed.length + missing.length)}</p>
      </ScanField>
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
