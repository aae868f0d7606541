import type { JSX } from 'preact';
import { Route, Switch } from 'wouter-preact';
import type { DeliveryId } from '../../../care/ids.ts';
import { AmendDeliveryForm } from './amend-delivery-form.tsx';
import { AsideForm } from './aside-form.tsx';
import { CountLotForm } from './count-lot-form.tsx';
import { DeliveryForm } from './delivery-form.tsx';
import { KitsScreen } from './kits-screen.tsx';
import { LotScreen } from './lot-screen.tsx';
import { PpeForm } from './ppe-form.tsx';
import { RecallLotForm } from './recall-lot-form.tsx';
import { UnpackScreen } from './unpack-screen.tsx';

interface LotParams {
  readonly kind: string;
  readonly lot: string;
}
interface DeliveryParams {
  readonly kind: string;
  readonly id: DeliveryId;
}

export function KitsPages(): JSX.Element {
  return (
    <Switch>
      <Route path="/kits" component={KitsScreen} />
      <Route path="/kits/new" component={DeliveryForm} />
      <Route path="/kits/aside" component={AsideForm} />
      <Route path="/kits/ppe" component={PpeForm} />
      <Route path="/kits/unpack/:kind/:id">
        {({ kind, id }: DeliveryParams) => <UnpackScreen key={id} kitKind={kind} delivery={id} />}
      </Route>
      <Route path="/kits/delivery/:kind/:id">
        {({ kind, id }: DeliveryParams) => (
          <AmendDeliveryForm key={id} kitKind={kind} delivery={id} />
        )}
      </Route>
      <Route path="/kits/lot/:kind/:lot">
        {({ kind, lot }: LotParams) => <LotScreen key={lot} kitKind={kind} lot={lot} />}
      </Route>
      <Route path="/kits/lot/:kind/:lot/count">
        {({ kind, lot }: LotParams) => <CountLotForm key={lot} kitKind={kind} lot={lot} />}
      </Route>
      <Route path="/kits/lot/:kind/:lot/recall">
        {({ kind, lot }: LotParams) => <RecallLotForm key={lot} kitKind={kind} lot={lot} />}
      </Route>
    </Switch>
  );
}
