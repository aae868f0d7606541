import type { JSX } from 'preact';
import { policyOn } from '../../../care/policy/in-force.ts';
import { usableKits } from '../../../care/supplies/stock.ts';
import { todayOf, useDesk } from '../../desk/desk.ts';
import { Button } from '../../pieces/form/button.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { PageHead } from '../page-head.tsx';
import { paths, to } from '../paths.ts';
import { KitKindPart } from './kit-kind-part.tsx';
import { PpePart } from './ppe-part.tsx';
import './kits.css';

/** What is on the shelf: each kind of kit by lot, soonest end first, and what protects staff. */
export function KitsScreen(): JSX.Element {
  const desk = useDesk();
  const { supplies: say } = useAllWords();
  const today = todayOf(desk);
  const { policy } = policyOn(desk.home, today);
  const usable = policy.kits.reduce((sum, kit) => sum + usableKits(desk.home, kit.id, today), 0);
  return (
    <>
      <PageHead title={say.title}>
        <p>{say.usable(usable)}</p>
      </PageHead>
      <div class="button-row">
        <Button kind="main" icon="kit" href={to(paths.newKits)}>
          {say.deliver}
        </Button>
        <Button href={to(paths.kitAside)}>{say.aside}</Button>
      </div>
      {policy.kits.map((kit) => (
        <KitKindPart key={kit.id} kit={kit} policy={policy} today={today} />
      ))}
      <PpePart policy={policy} />
    </>
  );
}
