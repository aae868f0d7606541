import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { useDesk } from '../../desk/desk.ts';
import { Button } from '../../pieces/form/button.tsx';
import { DataTable } from '../../pieces/list/data-table.tsx';
import { Dialog } from '../../pieces/page/dialog.tsx';
import type { AllWords } from '../../words/en-all.ts';
import { useAllWords } from '../../words/use-all-words.ts';
import { useAsked } from './use-asked.ts';

/** A tablet as the server tells a manager of it. */
interface Line {
  readonly id: string;
  readonly name: string;
  readonly lastMet?: string;
  readonly retiredAt?: string;
  readonly lost: boolean;
}

/** Every tablet that was ever set up, and taking one out of use. */
export function TabletList(): JSX.Element {
  const desk = useDesk();
  const words = useAllWords();
  const say = words.tablets;
  const { value, again } = useAsked<{ readonly devices: readonly Line[] }>('/devices');
  const [asking, setAsking] = useState<{ line: Line; lost: boolean } | undefined>(undefined);
  const retire = async ({ line, lost }: { line: Line; lost: boolean }) => {
    await desk.server?.ask('POST', `/devices/${line.id}/retire`, { lost });
    setAsking(undefined);
    again();
  };
  return (
    <>
      <DataTable
        caption={say.tablets}
        rows={value?.devices ?? []}
        rowKey={(line) => line.id}
        columns={[
          { key: 'name', label: say.name, cell: (line) => named(line, desk.device, words) },
          {
            key: 'met',
            label: say.met,
            cell: ({ lastMet }) => (lastMet === undefined ? say.never : say.at(lastMet)),
          },
          { key: 'state', label: say.state, cell: (line) => say.states[stateOf(line)] },
          { key: 'do', label: say.retire, cell: (line) => <Acts line={line} onAsk={setAsking} /> },
        ]}
      />
      <Dialog
        open={asking !== undefined}
        title={
          asking === undefined
            ? ''
            : (asking.lost ? say.lostTitle : say.retireTitle)(asking.line.name)
        }
        onClose={() => setAsking(undefined)}
      >
        <p>{asking?.lost === true ? say.lostBody : say.retireBody}</p>
        <Button kind="main" onPress={() => asking !== undefined && void retire(asking)}>
          {asking?.lost === true ? say.lostYes : say.retireYes}
        </Button>
      </Dialog>
    </>
  );
}

const stateOf = ({ lost, retiredAt }: Line) =>
  lost ? 'lost' : retiredAt === undefined ? 'inUse' : 'retired';

const named = (line: Line, here: string, { tablets }: AllWords): string =>
  line.id === here ? `${line.name} (${tablets.thisOne})` : line.name;

interface ActsProps {
  readonly line: Line;
  readonly onAsk: (asking: { line: Line; lost: boolean }) => void;
}

function Acts({ line, onAsk }: ActsProps): JSX.Element | null {
  const { tablets: say, now } = useAllWords();
  if (line.lost) return null;
  return (
    <div class="button-row">
      {line.retiredAt === undefined && (
        <Button
          label={now.about(say.retire, line.name)}
          onPress={() => onAsk({ line, lost: false })}
        >
          {say.retire}
        </Button>
      )}
      <Button label={now.about(say.lost, line.name)} onPress={() => onAsk({ line, lost: true })}>
        {say.lost}
      </Button>
    </div>
  );
}
