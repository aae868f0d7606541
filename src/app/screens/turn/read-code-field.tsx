import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { TurnId } from '../../../care/ids.ts';
import { useDesk } from '../../desk/desk.ts';
import { namesIn } from '../../desk/names.ts';
import { Button } from '../../pieces/form/button.tsx';
import { CodeText } from '../../pieces/scan/code-text.tsx';
import { ScanField } from '../../pieces/scan/scan-field.tsx';
import { useWords } from '../../words/use-words.ts';
import type { TurnData } from './turn-data.ts';
import { otherOfPair } from './turn-data.ts';
import type { TurnAct } from './use-turn.ts';

export interface ReadCodeFieldProps {
  readonly data: TurnData;
  readonly turn: TurnId;
  readonly turnAct: TurnAct;
  readonly touch: 'open-kit' | 'read-label';
}

/**
 * A label's code at the bedside: scanned, or typed twice. A typed code that looks like another needs a
 * scan, or the other of the pair to read the label too; who that was is kept with the fact.
 */
export function ReadCodeField({ data, turn, turnAct, touch }: ReadCodeFieldProps): JSX.Element {
  const desk = useDesk();
  const words = useWords();
  const [typed, setTyped] = useState<string | undefined>(undefined);
  const pair = data.turn?.pair;
  const other = pair && otherOfPair(desk, pair);
  const near = turnAct.refusal?.reason === 'code-near' && typed === turnAct.refusal.code;
  return (
    <>
      {near && other !== undefined && other !== desk.me && (
        <div class="second-reader">
          <CodeText code={typed} />
          <Button
            icon="look"
            onPress={() =>
              void turnAct.touch(
                { do: touch, code: typed, how: 'typed-twice', second: other },
                turn,
              )
            }
          >
            {words.identity.secondReads(namesIn(desk.home, words.refusals.somebody).staff(other))}
          </Button>
        </div>
      )}
      {turnAct.asking && <p role="status">{words.identity.askingElsewhere}</p>}
      <ScanField
        onCode={(code, way) => {
          setTyped(way === 'scanned' ? undefined : code);
          void turnAct.touch(
            { do: touch, code, how: way === 'scanned' ? 'scanned' : 'typed-twice' },
            turn,
          );
        }}
      />
    </>
  );
}
