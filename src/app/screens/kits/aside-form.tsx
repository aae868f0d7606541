import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { DataOf } from '../../../care/catalogue.ts';
import { policyOn } from '../../../care/policy/in-force.ts';
import { stockOf } from '../../../care/supplies/stock.ts';
import { putKitAside, unfitCode } from '../../../procedures/supplies.ts';
import { todayOf, useDesk } from '../../desk/desk.ts';
import { sayRefusal } from '../../desk/say-refusal.ts';
import { missing } from '../../keeping/checks.ts';
import { RecordForm } from '../../keeping/record-form.tsx';
import { useForm } from '../../keeping/use-form.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Choice } from '../../pieces/form/choice.tsx';
import { Select } from '../../pieces/form/select.tsx';
import { Part } from '../../pieces/page/part.tsx';
import { CodeText } from '../../pieces/scan/code-text.tsx';
import { ScanField } from '../../pieces/scan/scan-field.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { paths } from '../paths.ts';

type Why = DataOf<'kit.put-aside'>['why'];
const whys: readonly Why[] = [
  'damaged',
  'incomplete',
  'labels-differ',
  'expired',
  'recalled',
  'other',
];

interface KitAside {
  readonly kitKind: string;
  readonly code: string;
  readonly lot: string;
  readonly why: Why | '';
}

/** One kit found unfit before it was opened for a person. Its code is closed for ever. */
export function AsideForm(): JSX.Element {
  const desk = useDesk();
  const words = useAllWords();
  const { supplies, keeping } = words;
  const say = supplies.asideForm;
  const { kits } = policyOn(desk.home, todayOf(desk)).policy;
  const only = kits.length === 1 ? (kits[0]?.id ?? '') : '';
  const form = useForm<KitAside>(
    { kitKind: only, code: '', lot: '', why: '' },
    { title: say.title, back: paths.kits },
  );
  const { value, set, bind } = form;
  const [problem, setProblem] = useState<string | undefined>(undefined);
  return (
    <>
      <RecordForm
        title={say.title}
        lead={<p>{say.lead}</p>}
        back={paths.kits}
        keep={form.keep}
        onKeep={() => void keep()}
        label={say.press}
        before={
          <Part title={say.code}>
            {value.code === '' ? (
              <>
                <p class="soft">{say.codeHint}</p>
                <ScanField onCode={scanned} problem={problem} />
              </>
            ) : (
              <>
                <p>
                  {say.scanned} <CodeText code={value.code} />
                </p>
                <Button kind="quiet" onPress={() => set({ code: '' })}>
                  {say.again}
                </Button>
              </>
            )}
          </Part>
        }
      >
        {kits.length > 1 && (
          <Choice
            {...bind('kitKind')}
            label={say.kind}
            options={kits.map(({ id, name }) => ({ value: id, label: name }))}
          />
        )}
        {value.code === '' && (
          <Select
            {...bind('lot')}
            label={say.lot}
            none={say.noLot}
            options={stockOf(desk.home, value.kitKind).lots.map(({ lot }) => ({
              value: lot,
              label: lot,
            }))}
          />
        )}
        <Choice
          {...bind('why')}
          label={say.why}
          options={whys.map((why) => ({ value: why, label: supplies.reasons[why] }))}
        />
      </RecordForm>
    </>
  );

  /** Half a code, or one that is closed already, is told while the kit is still in the hand. */
  function scanned(code: string): void {
    const wrong = unfitCode(desk.home, { kitKind: value.kitKind, code, on: todayOf(desk) });
    setProblem(wrong && sayRefusal(wrong, { words, home: desk.home }));
    if (wrong === undefined) set({ code });
  }

  async function keep(): Promise<void> {
    const { kitKind, code, lot, why } = value;
    const wrong = missing({ kitKind, why }, keeping.pickOne);
    const which = code !== '' ? { code } : lot !== '' ? { lot } : {};
    await form.submit(wrong, (home, doing) =>
      why === '' ? { ok: true, value: [] } : putKitAside(home, { kitKind, why, ...which }, doing),
    );
  }
}
