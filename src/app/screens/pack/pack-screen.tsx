import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { RoundId } from '../../../care/ids.ts';
import { frameOf } from '../../../care/rounds/frame.ts';
import { boxToShutAgain } from '../../../care/rounds/in-box.ts';
import { progressOf } from '../../../care/rounds/progress.ts';
import { roundOf } from '../../../care/rounds/round.ts';
import { useDesk } from '../../desk/desk.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { EmptyPage } from '../empty-page.tsx';
import { PageHead } from '../page-head.tsx';
import { paths, to } from '../paths.ts';
import { CourierEarly } from './courier-early.tsx';
import { MissingPart } from './missing-part.tsx';
import { PackFrame } from './pack-frame.tsx';
import { PackScan } from './pack-scan.tsx';
import { ShutBox } from './shut-box.tsx';
import './pack.css';

/** The pack table: one scan a bag, the frame filling beside it, and a box that shuts only when it tallies. */
export function PackScreen({ round: id }: { readonly round: RoundId }): JSX.Element {
  const desk = useDesk();
  const words = useAllWords();
  const say = words.packing;
  const [early, setEarly] = useState(false);
  const round = roundOf(desk.home, id);
  if (round === undefined) return <EmptyPage title={words.refusals.unknownPerson} />;
  const progress = progressOf(desk.home, round);
  const closed =
    round.closings.length > 0 &&
    progress.tally.missing.length === 0 &&
    boxToShutAgain(desk.home, round) === undefined;
  return (
    <>
      <PageHead title={say.title}>
        <p>{words.roundList.title(round.planned.data.day)}</p>
      </PageHead>
      {closed && (
        <Notice
          kind="note"
          title={say.closed}
          action={
            <Button kind="main" icon="courier" href={to(paths.handOver(id))}>
              {words.rounds.handOver}
            </Button>
          }
        />
      )}
      <div class="pack">
        <div class="pack-do">
          {!closed && <PackScan round={round} progress={progress} />}
          <MissingPart round={round} tally={progress.tally} />
          {early ? (
            <CourierEarly round={round} progress={progress} onBack={() => setEarly(false)} />
          ) : (
            !closed && (
              <>
                <ShutBox round={round} progress={progress} />
                <div>
                  <Button icon="courier" onPress={() => setEarly(true)}>
                    {say.early}
                  </Button>
                </div>
              </>
            )
          )}
        </div>
        <PackFrame round={round} wires={frameOf(desk.home, round)} />
      </div>
    </>
  );
}
