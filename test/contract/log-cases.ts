import { CHAIN_START, type Instant } from '../../src/ledger/ids.ts';
import { same, throws } from './assert.ts';
import type { Case } from './cases.ts';
import { confirmed, facts, idsOf, markOf, mixed, other, service, start, tablet } from './facts.ts';

export const logCases: readonly Case[] = [
  {
    title: 'a new store is empty, and says whose it is',
    async run(place) {
      const store = await place.open();
      same(await store.head(), { service, format: 1, ...start, pending: 0, rewinds: 0 });
      same(await store.confirmed(0, 10), []);
      same(await store.chainAt(0), CHAIN_START);
      same(await store.chainAt(1), undefined);
    },
  },
  {
    title: 'what is appended reads back byte for byte, also after it is opened again',
    async run(place) {
      const entries = confirmed(facts(3, { secret: { name: 'Ada é😀' } }));
      const store = await place.open();
      const done = await store.commit({ log: { expect: CHAIN_START, append: entries } });
      same(done.ok && markOf(done.head), markOf(entries[2]!));
      await store.close();
      const again = await place.open();
      same(await again.confirmed(0, 10), entries);
      same(await again.confirmed(1, 1), [entries[1]]);
      same(await again.chainAt(2), entries[1]!.chain);
      same(markOf(await again.head()), markOf(entries[2]!));
    },
  },
  {
    title: 'a fold is given plain facts with their receipt and the private value',
    async run(place) {
      const [written] = facts(1, { secret: { name: 'Ada' } });
      const [entry] = confirmed([written!]);
      const store = await place.open();
      await store.commit({ log: { expect: CHAIN_START, append: [entry!] } });
      const { id, body, position, arrived, via, skew, chain } = entry!;
      const fields = JSON.parse(body) as object;
      same(await store.opened(0, 10), [
        {
          ...{ id, position, arrived, via, skew, chain },
          ...fields,
          service: undefined,
          with: [],
          private: { name: 'Ada' },
          size: body.length,
        },
      ]);
    },
  },
  {
    title: 'thousands of facts over many commits keep their order and their chain',
    async run(place) {
      const entries = confirmed(facts(1730));
      const store = await place.open();
      let chain = CHAIN_START;
      for (let from = 0; from < entries.length; ) {
        const append = entries.slice(from, from + 1 + ((from * 7) % 613));
        const done = await store.commit({ log: { expect: chain, append } });
        same(done.ok, true);
        chain = done.head.chain;
        from += append.length;
      }
      const read = await store.confirmed(0, 5000);
      same(read, entries);
      same(idsOf(await store.opened(499, 702)), idsOf(entries.slice(499, 1201)));
      for (const position of [1, 499, 500, 501, 1000, 1729, 1730])
        same(await store.chainAt(position), entries[position - 1]!.chain, `chain at ${position}`);
    },
  },
  {
    title:
      'of the facts at some places only those that pass are opened, across blocks and within one',
    async run(place) {
      const entries = confirmed(mixed(1230));
      const store = await place.open();
      await store.commit({ log: { expect: CHAIN_START, append: entries } });
      const since = '2026-11-25T08:10:00.000Z' as Instant;
      const only = { over: new Set(['swab.taken']), since };
      const all = await store.opened(0, 5000);
      const passing = all.filter(({ kind, at }) => kind !== 'swab.taken' || at >= since);
      same(passing.length > 100 && passing.length < 1130, true);
      for (const [after, limit] of [
        [0, 5000],
        [0, 500],
        [499, 2],
        [730, 500],
        [1229, 1],
        [1230, 9],
        [3, 0],
      ] as const)
        same(
          await store.opened(after, limit, only),
          passing.filter(({ position = 0 }) => position > after && position <= after + limit),
          `${limit} after ${after}`,
        );
      same(await store.opened(0, 5000, { over: new Set(), since }), all);
    },
  },
  {
    title: 'an append that expects another chain moves nothing',
    async run(place) {
      const entries = confirmed(facts(2));
      const store = await place.open();
      await store.commit({ log: { expect: CHAIN_START, append: [entries[0]!] } });
      const late = await store.commit({
        log: { expect: CHAIN_START, append: [entries[0]!] },
        meta: { note: 'no' },
        erase: [entries[0]!.id],
      });
      same([late.ok, late.head.position], [false, 1]);
      same(await store.meta('note'), undefined);
      same(await store.erased(), new Set());
    },
  },
  {
    title: 'the same position with another chain is not the same place',
    async run(place) {
      const ours = confirmed(facts(2));
      const theirs = confirmed(facts(2, { device: other }));
      const store = await place.open();
      await store.commit({ log: { expect: CHAIN_START, append: theirs } });
      const done = await store.commit({ log: { expect: ours[1]!.chain, append: [] } });
      same([done.ok, done.head.chain], [false, theirs[1]!.chain]);
    },
  },
  {
    title: 'a gap in the positions is refused, and nothing is half written',
    async run(place) {
      const entries = confirmed(facts(3));
      const store = await place.open();
      const append = [entries[0]!, entries[2]!];
      await throws(() => store.commit({ log: { expect: CHAIN_START, append } }), 'refused');
      await throws(
        () =>
          store.commit({
            log: {
              expect: CHAIN_START,
              append: [{ ...entries[0]! }, { ...entries[0]!, position: 2 }],
            },
          }),
        'refused',
      );
      same((await store.head()).position, 0);
      same(await store.confirmed(0, 9), []);
    },
  },
  {
    title: 'two that race for the same place: one wins, the other hears of it',
    async run(place) {
      const [one, two] = [await place.open(), await place.open()];
      const ours = confirmed(facts(1));
      const theirs = confirmed(facts(1, { device: other }), start, other);
      const done = await Promise.all([
        one.commit({ log: { expect: CHAIN_START, append: ours } }),
        two.commit({ log: { expect: CHAIN_START, append: theirs } }),
      ]);
      same(done.map(({ ok }) => ok).sort(), [false, true]);
      const log = await one.confirmed(0, 9);
      same(log, done[0].ok ? ours : theirs);
      same(await two.confirmed(0, 9), log);
    },
  },
  {
    title: 'ids are known in the log and while they wait, others are not',
    async run(place) {
      const store = await place.open();
      const entries = confirmed(facts(600));
      const waiting = facts(1, { device: other });
      await store.commit({ log: { expect: CHAIN_START, append: entries }, wait: waiting });
      const strange = idsOf(facts(1, { device: tablet, secret: 1 }));
      const asked = [entries[0]!.id, entries[599]!.id, ...idsOf(waiting), ...strange];
      same(await store.known(asked), new Set(asked.slice(0, 3)));
    },
  },
];
