import { beforeEach, expect, it } from 'vitest';
import type { StaffId } from '../../care/ids.ts';
import type { Drawer } from '../tablet/drawer.ts';
import { draftsOf, dropDraft, holdDraft, putDrafts } from './draft-store.ts';
import { DRAFTS_LAST_MS, sealedDrafts } from './sealed-drafts.ts';

const [jonah, pia] = ['jonahmarsh', 'piadell004'] as StaffId[] as [StaffId, StaffId];
const draft = { path: '/person/x/plan', title: 'Plan', start: { said: '' }, value: { said: 'No' } };
const texts = new Map<string, string>();
const drawer: Drawer = {
  read: (name) => Promise.resolve(texts.get(name)),
  write: (name, text) => {
    if (text === undefined) texts.delete(name);
    else texts.set(name, text);
    return Promise.resolve();
  },
};
const forget = (): void => [jonah, pia].forEach((who) => putDrafts(who, []));
beforeEach(() => {
  texts.clear();
  forget();
});

async function typedBy(who: StaffId, at = 0): Promise<void> {
  const drafts = sealedDrafts(drawer, () => at);
  await drafts.handTo(who);
  holdDraft(who, draft);
  await drafts.flush();
  forget();
}

it('what was typed comes back after the program began anew, to whoever typed it', async () => {
  await typedBy(jonah);
  const anew = sealedDrafts(drawer, () => 1000);
  await anew.handTo(pia);
  expect(draftsOf(pia)).toEqual([]);
  await anew.handTo(jonah);
  expect(draftsOf(jonah)).toEqual([draft]);
});

it('what was kept or dropped does not come back', async () => {
  await typedBy(jonah);
  const anew = sealedDrafts(drawer, () => 1000);
  await anew.handTo(jonah);
  dropDraft(jonah, draft.path);
  await anew.flush();
  expect([...texts.keys()]).toEqual([]);
});

it('lasts over a weekend, and is then taken out', async () => {
  await typedBy(jonah);
  const friday = sealedDrafts(drawer, () => DRAFTS_LAST_MS);
  await friday.handTo(jonah);
  await friday.flush();
  expect(draftsOf(jonah)).toHaveLength(1);
  forget();
  await sealedDrafts(drawer, () => DRAFTS_LAST_MS + 1).handTo(jonah);
  expect(draftsOf(jonah)).toEqual([]);
  expect([...texts.keys()]).toEqual([]);
});

it('a text that another program wrote otherwise is dropped, not half read', async () => {
  texts.set(`drafts/${jonah}`, '{"at":0,"drafts":[{"path":7}]}');
  await sealedDrafts(drawer, () => 0).handTo(jonah);
  expect(draftsOf(jonah)).toEqual([]);
});

it('without room it stays in memory, and nothing is thrown', async () => {
  const full: Drawer = { ...drawer, write: () => Promise.reject(new Error('full')) };
  const drafts = sealedDrafts(full, () => 0);
  await drafts.handTo(jonah);
  holdDraft(jonah, draft);
  await drafts.flush();
  expect(draftsOf(jonah)).toEqual([draft]);
});
