import { CHAIN_START, NO_FACT } from '../../src/ledger/ids.ts';
import type { DeviceHead, LedgerStore } from '../../src/ledger/store.ts';
import { same, throws } from './assert.ts';
import type { Case } from './cases.ts';
import { confirmed, facts, idsOf, markOf, other, start, tablet } from './facts.ts';

const fresh: DeviceHead = { id: tablet, seq: 0, last: NO_FACT };
const enrol = (store: LedgerStore) => store.commit({ own: { expect: null, head: fresh } });

export const waitingCases: readonly Case[] = [
  {
    title: "a device's own fact and its head move together",
    async run(place) {
      const store = await place.open();
      await enrol(store);
      const [one] = facts(1);
      const next = { id: tablet, seq: 1, last: one!.id };
      await store.commit({ own: { expect: fresh, head: next }, wait: [one!] });
      await store.close();
      const again = await place.open();
      same((await again.head()).device, next);
      same((await again.head()).pending, 1);
      same(await again.pending(), [one]);
    },
  },
  {
    title: 'two tabs that build on the same fact: the second is told, and the chain does not fork',
    async run(place) {
      const [one, two] = [await place.open(), await place.open()];
      await enrol(one);
      const [ours] = facts(1);
      const [theirs] = facts(1, { secret: 'x' });
      const done = await Promise.all([
        one.commit({
          own: { expect: fresh, head: { ...fresh, seq: 1, last: ours!.id } },
          wait: [ours!],
        }),
        two.commit({
          own: { expect: fresh, head: { ...fresh, seq: 1, last: theirs!.id } },
          wait: [theirs!],
        }),
      ]);
      same(done.map(({ ok }) => ok).sort(), [false, true]);
      same((await two.pending()).length, 1);
    },
  },
  {
    title: 'a second enrolment is compared too, even before the first fact',
    async run(place) {
      const store = await place.open();
      same((await enrol(store)).ok, true);
      same((await enrol(store)).ok, false);
      const anew = { id: other, seq: 0, last: NO_FACT };
      same((await store.commit({ own: { expect: fresh, head: anew } })).ok, true);
      same((await store.commit({ own: { expect: fresh, head: fresh } })).ok, false);
      same((await store.head()).device, anew);
    },
  },
  {
    title: 'what comes back in the log waits no longer, the rest does, in order',
    async run(place) {
      const store = await place.open();
      const written = facts(5);
      await store.commit({ wait: written });
      const back = confirmed([written[3]!, written[0]!]);
      await store.commit({ log: { expect: CHAIN_START, append: back } });
      same(idsOf(await store.pending()), idsOf([written[1]!, written[2]!, written[4]!]));
      same(idsOf(await store.pending({ skip: 1, limit: 1 })), idsOf([written[2]!]));
      same((await store.head()).pending, 3);
    },
  },
  {
    title: 'a fact that is known already does not begin to wait again',
    async run(place) {
      const store = await place.open();
      const written = facts(3);
      await store.commit({ log: { expect: CHAIN_START, append: confirmed(written.slice(0, 1)) } });
      await store.commit({ wait: written });
      await store.commit({ wait: written });
      same(idsOf(await store.pending()), idsOf(written.slice(1)));
    },
  },
  {
    title: 'a rewind puts what stood above back in front of what waits, and loses nothing',
    async run(place) {
      const store = await place.open();
      const written = facts(1300, { secret: 's' });
      const entries = confirmed(written);
      const own = facts(2, { device: other });
      await store.commit({ log: { expect: CHAIN_START, append: entries }, wait: own });
      const to = markOf(entries[699]!);
      const done = await store.commit({
        log: { expect: entries[1299]!.chain, rewindTo: to, append: [] },
      });
      same(done.head, { ...(await store.head()), ...to, pending: 602, rewinds: 1 });
      same(await store.pending(), [...written.slice(700), ...own]);
      same(await store.chainAt(701), undefined);
      same(await store.known([entries[1000]!.id]), new Set([entries[1000]!.id]));
    },
  },
  {
    title: 'a rewind and what follows it are one step',
    async run(place) {
      const store = await place.open();
      const written = facts(4);
      const entries = confirmed(written);
      const theirs = facts(2, { device: other });
      await store.commit({ log: { expect: CHAIN_START, append: entries } });
      const rest = confirmed([theirs[0]!, written[3]!, theirs[1]!], entries[1]);
      await store.commit({
        log: { expect: entries[3]!.chain, rewindTo: markOf(entries[1]!), append: rest },
      });
      same(idsOf(await store.confirmed(0, 9)), idsOf([...entries.slice(0, 2), ...rest]));
      same(idsOf(await store.pending()), idsOf([written[2]!]));
      await store.close();
      const again = await place.open();
      same((await again.head()).chain, rest[2]!.chain);
    },
  },
  {
    title: 'a rewind to nothing, and to a place that is not in the log',
    async run(place) {
      const store = await place.open();
      const entries = confirmed(facts(2));
      await store.commit({ log: { expect: CHAIN_START, append: entries } });
      const wrong = { position: 1, chain: entries[1]!.chain };
      await throws(
        () => store.commit({ log: { expect: entries[1]!.chain, rewindTo: wrong, append: [] } }),
        'refused',
      );
      await store.commit({ log: { expect: entries[1]!.chain, rewindTo: start, append: [] } });
      same(markOf(await store.head()), start);
      same(idsOf(await store.pending()), idsOf(entries));
    },
  },
  {
    title: 'a fact set aside still waits, says why, and can be taken back into the line',
    async run(place) {
      const store = await place.open();
      const written = facts(2);
      await store.commit({ wait: written });
      const id = written[0]!.id;
      await store.commit({ aside: new Map([[id, 'bad-kind']]) });
      same(await store.pending(), [{ ...written[0]!, aside: 'bad-kind' }, written[1]]);
      await store.commit({ aside: new Map([[id, null]]) });
      same(await store.pending(), written);
    },
  },
];
