import type { FactOf } from '../care/catalogue.ts';
import type { Home } from '../care/home.ts';
import { allow, refuse } from '../care/refusal.ts';
import { ranks } from '../care/staff/rights.ts';
import { standingFor } from './describe.ts';
import type { Doing, Outcome } from './doing.ts';

/** A senior says once which columns the reporting body's file has, and how days are written in it. */
export function setUpload(
  home: Home,
  setting: Omit<FactOf<'upload.set'>['data'], 'replaces'>,
  doing: Doing,
): Outcome {
  if (!ranks(home, doing.by, 'senior')) return refuse({ reason: 'needs-senior' });
  const columns = setting.columns.map((column) => ({ ...column, title: column.title.trim() }));
  if (columns.some(({ title }) => title === '')) return refuse({ reason: 'empty', field: 'title' });
  if (columns.some(({ title }) => title.length > 60))
    return refuse({ reason: 'too-long', field: 'title', most: 60 });
  if (columns.some(({ holds, text }) => holds === 'fixed' && (text ?? '').trim() === ''))
    return refuse({ reason: 'empty', field: 'text' });
  // Without the code nothing that comes back could be put beside its tube.
  if (!columns.some(({ holds }) => holds === 'code')) return refuse({ reason: 'no-code-column' });
  const old = standingFor(home, ['policy', 'upload'], {
    kind: 'upload.set',
    where: (fact) => fact.data.test === setting.test,
  });
  return allow([{ kind: 'upload.set', data: { ...setting, columns, ...old } }]);
}
