import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { policyOn } from '../../../care/policy/in-force.ts';
import type { Box } from '../../../exchange/barcodes/read-box.ts';
import { readBox } from '../../../exchange/barcodes/read-box.ts';
import { todayOf, useDesk } from '../../desk/desk.ts';
import { Notice } from '../../pieces/list/notice.tsx';
import { ScanField } from '../../pieces/scan/scan-field.tsx';
import { useWords } from '../../words/use-words.ts';

/** One scan of a delivery's box. What it says is handed on for the form to fill in; nothing is kept. */
export function BoxScan({ onBox }: { readonly onBox: (box: Box) => void }): JSX.Element {
  const desk = useDesk();
  const { identity } = useWords();
  const [said, setSaid] = useState<{ readonly wrong: boolean; readonly text: string }>();
  const { policy } = policyOn(desk.home, todayOf(desk));
  const take = (code: string): void => {
    const read = readBox(policy, code, todayOf(desk));
    if (!read.ok) {
      setSaid({ wrong: true, text: identity.box.faults[read.reason] });
      return;
    }
    const { kit } = read.box;
    setSaid({ wrong: false, text: kit === undefined ? identity.box.noKind : identity.box.read });
    onBox(read.box);
  };
  return (
    <section aria-label={identity.box.title}>
      <p>{identity.box.note}</p>
      <ScanField expect="box" onCode={take} problem={said?.wrong === true ? said.text : undefined}>
        {said?.wrong === false && <p>{said.text}</p>}
      </ScanField>
    </section>
  );
}

/** Codes of a delivery that are easily mistaken for each other, pair by pair. */
export function NearPairs({
  pairs,
}: {
  readonly pairs: readonly (readonly [string, string])[];
}): JSX.Element | null {
  const { identity } = useWords();
  if (pairs.length === 0) return null;
  return (
    <Notice kind="look" title={identity.nearTitle}>
      <p>{identity.nearNote}</p>
      <ul class="near-pairs">
        {pairs.map(([first, second]) => (
          <li key={`${first} ${second}`}>{identity.nearPair(first, second)}</li>
        ))}
      </ul>
    </Notice>
  );
}
