import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { nearCodes } from '../../../care/custody/near-codes.ts';
import type { StaffId } from '../../../care/ids.ts';
import type { Code } from '../../../care/kind.ts';
import type { Round } from '../../../care/rounds/round.ts';
import type { ReadCode } from '../../../procedures/second-person.ts';
import { malformed, usedBefore } from '../../../procedures/take-swab/kit.ts';
import { todayOf, useDesk } from '../../desk/desk.ts';
import { sayRefusal } from '../../desk/say-refusal.ts';
import type { FormOf } from '../../keeping/use-form.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { CodeText } from '../../pieces/scan/code-text.tsx';
import { ScanField } from '../../pieces/scan/scan-field.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { howOf } from '../how-of.ts';
import { StepHead } from '../new-result/step-head.tsx';
import { SecondReader } from '../parts/second-reader.tsx';
import type { PaperEntry, Place } from './paper-entry.ts';
import { placesFor } from './paper-entry.ts';

interface PaperCodesProps {
  readonly form: FormOf<PaperEntry>;
  readonly round: Round;
}

/** The code on the paper, then on what is in the hand. What differs is told at once, and may be kept. */
export function PaperCodes({ form, round }: PaperCodesProps): JSX.Element {
  const words = useAllWords();
  const say = words.fromPaper;
  const { value, set } = form;
  const left = placesFor(value).filter((place) => value.codes[place] === undefined);
  const [place] = left;

  const keep = (read: ReadCode | 'not-here'): void => {
    if (place === undefined) return;
    set({
      codes: { ...value.codes, [place]: read },
      ...(left.length === 1 && { step: 'check' }),
    });
  };

  if (place === undefined) return <></>;
  return (
    <>
      <OneCode key={place} place={place} entry={value} round={round} onRead={keep} />
      <div class="button-row">
        {place !== 'record' && (
          <Button onPress={() => keep('not-here')}>{say.notHere[place]}</Button>
        )}
        <Button kind="quiet" icon="back" onPress={() => set({ step: 'what', codes: {} })}>
          {say.backToPaper}
        </Button>
      </div>
    </>
  );
}

interface OneCodeProps {
  readonly place: Place;
  readonly entry: PaperEntry;
  readonly round: Round;
  readonly onRead: (read: ReadCode) => void;
}

/** One reading: a slip is refused, a code that does not fit is told and kept only on purpose. */
function OneCode({ place, entry, round, onRead }: OneCodeProps): JSX.Element {
  const desk = useDesk();
  const words = useAllWords();
  const say = words.fromPaper;
  const [said, setSaid] = useState<Said>({ read: undefined, problem: undefined });
  const { read, problem } = said;
  const telling = { words, home: desk.home };

  const take = (next: ReadCode): void => {
    const { kitKind } = round.planned.data;
    const wrong = malformed(desk.home, { kitKind, code: next.code, on: todayOf(desk) });
    if (wrong !== undefined) {
      setSaid({ read: undefined, problem: sayRefusal(wrong, telling) });
      return;
    }
    const doubt = doubtOf(next);
    if (doubt === undefined) onRead(next);
    else setSaid({ read: next, problem: doubt });
  };

  /** How many codes a typed one is nearly, which nobody else has read yet. */
  const nearTo = ({ code, how, second }: ReadCode): number =>
    how === 'scanned' || second !== undefined ? 0 : nearCodes(desk.home, code as Code).length;

  const doubtOf = (next: ReadCode): string | undefined => {
    const { code } = next;
    const near = nearTo(next);
    if (near > 0) return words.identity.codeNear(near);
    const { record } = entry.codes;
    if (place !== 'record')
      return record !== 'not-here' && record?.code !== code ? say.differs : undefined;
    const used = usedBefore(desk.home, code as Code);
    return used && sayRefusal(used, telling);
  };

  const near = read !== undefined && nearTo(read) > 0;
  return (
    <>
      <StepHead title={say.scan[place]} />
      {read === undefined || near ? (
        <ScanField
          onCode={(code, way) => take({ code: code.trim(), how: howOf(way) })}
          problem={problem}
        />
      ) : (
        <Notice
          kind="look"
          title={problem ?? ''}
          action={
            <div class="button-row">
              <Button
                kind="main"
                icon="scan"
                onPress={() => setSaid({ read: undefined, problem: undefined })}
              >
                {say.scanAgain}
              </Button>
              <Button onPress={() => onRead(read)}>{say.keepIt}</Button>
            </div>
          }
        >
          <CodeText code={read.code} /> {say.keepAnyway}
        </Notice>
      )}
      {near && (
        <SecondReader
          key={read.code}
          code={read.code}
          onSecond={(second: StaffId) => take({ ...read, second })}
        />
      )}
    </>
  );
}

interface Said {
  /** Read, and in doubt. */
  readonly read: ReadCode | undefined;
  readonly problem: string | undefined;
}
