import { CHAIN_START } from '../../src/ledger/ids.ts';
import type { LedgerStore, Mark } from '../../src/ledger/store.ts';
import { same } from './assert.ts';
import type { Case } from './cases.ts';
import { confirmed, facts, markOf } from './facts.ts';

const withoutPrivate = (fact: object) => ({ ...fact, private: undefined });
const snapshotAt = ({ position, chain }: Mark) => ({
  fold: 3,
  position,
  chain,
  parts: { now: '{"é":1}', rest: 'x'.repeat(2000) },
});

async function filled(store: LedgerStore, count: number) {
  const written = facts(count, { secret: { name: 'Ada' } });
  const entries = confirmed(written);
  await store.commit({ log: { expect: CHAIN_START, append: entries } });
  return { written, entries, head: entries.at(-1)! };
}

export const keepingCases: readonly Case[] = [
  {
    title: 'an erasure takes the private part from log and waiting, and leaves the rest',
    async run(place) {
      const store = await place.open();
      const { written, entries } = await filled(store, 600);
      const waiting = facts(602, { secret: { name: 'Ada' } }).slice(600);
      await store.commit({ wait: waiting });
      const erase = [written[0]!.id, written[550]!.id, waiting[1]!.id];
      await store.commit({ erase });
      same(await store.confirmed(0, 1), [withoutPrivate(entries[0]!)]);
      same(await store.confirmed(549, 3), [
        entries[549],
        withoutPrivate(entries[550]!),
        entries[551],
      ]);
      same(await store.pending(), [waiting[0], withoutPrivate(waiting[1]!)]);
      same(await store.erased(), new Set(erase));
      const [opened] = await store.opened(0, 1);
      same([opened!.private, opened!.hidden], [undefined, true]);
      await store.close();
      const again = await place.open();
      same(await again.confirmed(0, 1), [withoutPrivate(entries[0]!)]);
    },
  },
  {
    title: 'an erased private part is never taken in again, by whatever way it comes',
    async run(place) {
      const store = await place.open();
      const written = facts(3, { secret: 'x' });
      await store.commit({ erase: [written[0]!.id, written[1]!.id] });
      await store.commit({ wait: [written[0]!] });
      const back = confirmed(written.slice(1));
      await store.commit({ log: { expect: CHAIN_START, append: back } });
      same(await store.pending(), [withoutPrivate(written[0]!)]);
      same(await store.confirmed(0, 9), [withoutPrivate(back[0]!), back[1]]);
      await store.commit({
        log: {
          expect: back[1]!.chain,
          rewindTo: { position: 0, chain: CHAIN_START },
          append: back,
        },
        erase: [written[2]!.id],
      });
      same(await store.confirmed(0, 9), back.map(withoutPrivate));
    },
  },
  {
    title: 'small things are kept with the facts, and listed by how their key begins',
    async run(place) {
      const store = await place.open();
      await store.commit({
        meta: { clock: '{"off":3}', 'wrap/a': '1', 'wrap/b': '2', wrapper: '3' },
      });
      await store.commit({ meta: { 'wrap/b': null, 'wrap/c': '4' } });
      same(await store.meta('clock'), '{"off":3}');
      same(await store.meta('nothing'), undefined);
      same(
        await store.metas('wrap/'),
        new Map([
          ['wrap/a', '1'],
          ['wrap/c', '4'],
        ]),
      );
    },
  },
  {
    title: 'a snapshot made at the head is kept, whole or by the part',
    async run(place) {
      const store = await place.open();
      const { head } = await filled(store, 3);
      const snapshot = snapshotAt(head);
      same(await store.saveSnapshot(snapshot), true);
      await store.close();
      const again = await place.open();
      same(await again.snapshot(3), snapshot);
      same(await again.snapshot(3, ['now']), { ...snapshot, parts: { now: '{"é":1}' } });
      same(await again.snapshot(4), undefined);
    },
  },
  {
    title: 'a snapshot of a head that has moved is not kept',
    async run(place) {
      const store = await place.open();
      const { entries } = await filled(store, 3);
      same(await store.saveSnapshot(snapshotAt(entries[1]!)), false);
      same(
        await store.saveSnapshot({ ...snapshotAt(entries[2]!), chain: entries[1]!.chain }),
        false,
      );
      same(await store.snapshot(3), undefined);
    },
  },
  {
    title: 'a newer fold takes the place of the older one',
    async run(place) {
      const store = await place.open();
      const { head } = await filled(store, 1);
      await store.saveSnapshot(snapshotAt(head));
      await store.saveSnapshot({ ...snapshotAt(head), fold: 4, parts: { all: 'y' } });
      same(await store.snapshot(3), undefined);
      same((await store.snapshot(4))?.parts, { all: 'y' });
    },
  },
  {
    title: 'a rewind lowers a snapshot that stands above it, and leaves one below',
    async run(place) {
      const store = await place.open();
      const { entries, head } = await filled(store, 9);
      await store.saveSnapshot(snapshotAt(head));
      const to = markOf(entries[4]!);
      await store.commit({ log: { expect: head.chain, rewindTo: to, append: [] } });
      same(await store.snapshot(3), { ...snapshotAt(head), ...to });
      const more = confirmed(facts(2, { secret: 7 }), to);
      await store.commit({ log: { expect: to.chain, append: more } });
      await store.commit({
        log: { expect: more[1]!.chain, rewindTo: markOf(more[0]!), append: [] },
      });
      same(await store.snapshot(3), { ...snapshotAt(head), ...to });
    },
  },
  {
    title: 'an erasure drops every snapshot',
    async run(place) {
      const store = await place.open();
      const { head, written } = await filled(store, 2);
      await store.saveSnapshot(snapshotAt(head));
      await store.commit({ erase: [written[0]!.id] });
      same(await store.snapshot(3), undefined);
    },
  },
  {
    title: 'the format only ever rises',
    async run(place) {
      const store = await place.open();
      await store.commit({ format: 2 });
      await store.commit({ format: 1 });
      same((await store.head()).format, 2);
    },
  },
];
