import type { JSX } from 'preact';
import { factsIn } from '../../../care/home.ts';
import type { PersonId } from '../../../care/ids.ts';
import { EmptyPage } from '../empty-page.tsx';
import { CautionsPart } from './cautions-part.tsx';
import { DecisionPart } from './decision-part.tsx';
import { DuePart } from './due-part.tsx';
import { HealthPart } from './health-part.tsx';
import { HistoryPart } from './history-part.tsx';
import { usePerson } from './person-data.ts';
import { PersonHead } from './person-head.tsx';
import { PicturesPart } from './pictures-part.tsx';
import { PlanPart } from './plan-part.tsx';
import { PracticePart } from './practice-part.tsx';
import { PreparationsPart } from './preparations-part.tsx';
import { ProposalPart } from './proposal-part.tsx';
import { SharingPart } from './sharing-part.tsx';
import {
  HelpersPart,
  KnownByPart,
  TimesPart,
  WaysPart,
  WherePart,
  WhoPart,
} from './side-parts.tsx';
import { SwabsPart } from './swabs-part.tsx';

/** Everything on record about one person: what matters today first, how we know last. */
export function PersonScreen({ person }: { readonly person: PersonId }): JSX.Element {
  const data = usePerson(person);
  if (factsIn(data.desk.home, 'person', person).length === 0) {
    return <EmptyPage title={data.words.refusals.unknownPerson} />;
  }
  return (
    <div class="person-whole">
      <PersonHead {...data} />
      <div class="person-page">
        <div>
          <DuePart {...data} />
          <PlanPart {...data} />
          <ProposalPart {...data} />
          <CautionsPart {...data} />
          <DecisionPart {...data} />
          <PicturesPart {...data} />
          <PracticePart {...data} />
          <PreparationsPart {...data} />
          <SwabsPart {...data} />
        </div>
        <div>
          <WherePart {...data} />
          <HealthPart {...data} />
          <WhoPart {...data} />
          <WaysPart {...data} />
          <TimesPart {...data} />
          <HelpersPart {...data} />
          <SharingPart {...data} />
          <KnownByPart {...data} />
        </div>
      </div>
      <HistoryPart {...data} />
    </div>
  );
}
