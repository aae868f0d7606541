import { factsIn, ofKind } from '../../care/home.ts';
import { GROUP } from '../../care/ids.ts';
import type { Code } from '../../care/kind.ts';
import { instantOf } from '../../care/time.ts';
import { type DatedFact, keepAsArrived, pen, serverDesk } from '../service/write-facts.ts';
import type { GroupNeeds } from './needs.ts';
import type { UsedCodes } from './used-codes.ts';
import { MOST_HASHES, type Question, type Reply } from './wire.ts';

const WITHIN_MS = 15_000;
/** How often the codes that nobody has answered for are asked about again. */
const EVERY_MS = 60_000;
const SOON_MS = 1000;
/** Questions to one home in one go: the rest waits, so that its door stays open for bedsides. */
const MOST_QUESTIONS = 10;

/**
 * Asks the other homes about every code that stands on a test here: those opened with no signal, and
 * all of them again after a start, as another home may have put an old copy back. What is found is kept
 * as a fact, from which the finding is computed that holds the test.
 */
export class CheckUsed {
  /** Codes that a home has answered for, by the address of that home. */
  private readonly answered = new Map<string, Set<Code>>();
  private running: Promise<number> | undefined;
  private timer: ReturnType<typeof setTimeout> | undefined;
  private onFault: (error: unknown) => void = () => undefined;

  constructor(
    private readonly needs: GroupNeeds,
    private readonly used: UsedCodes,
  ) {}

  /** Another home has these on tests too: it is asked, unless it has said so before. */
  lookAgain(codes: readonly Code[], service: string): void {
    if (codes.length === 0) return;
    void this.needs.reader.read().then((home) => {
      const news = codes.filter((code) => !isTold(home, code, service));
      for (const known of this.answered.values()) for (const code of news) known.delete(code);
      if (news.length > 0) this.soon();
    }, this.onFault);
  }

  /** Asks about all that nobody has answered for; how many were found used elsewhere. */
  run(): Promise<number> {
    this.running ??= this.askAll().finally(() => {
      this.running = undefined;
    });
    return this.running;
  }

  /** Soon, once, however often it is said: facts have come in. */
  soon(): void {
    clearTimeout(this.timer);
    this.timer = setTimeout(() => void this.run().catch(this.onFault), SOON_MS);
    this.timer.unref();
  }

  /** Looks every minute. Answers what ends it. */
  keepLooking(onFault: (error: unknown) => void): () => void {
    this.onFault = onFault;
    const look = () => void this.run().catch(onFault);
    const timer = setInterval(look, EVERY_MS);
    timer.unref();
    look();
    return () => {
      clearInterval(timer);
      clearTimeout(this.timer);
    };
  }

  private async askAll(): Promise<number> {
    let found = 0;
    for (const peer of this.needs.peers) found += await this.askOne(peer);
    return found;
  }

  private async askOne(peer: URL): Promise<number> {
    const { parts, ask } = this.needs;
    const answered = this.answered.get(peer.href) ?? new Set();
    this.answered.set(peer.href, answered);
    let found = 0;
    for (let asked = 0; asked < MOST_QUESTIONS; asked += 1) {
      const codes = await this.used.onTests(answered, MOST_HASHES);
      if (codes.length === 0) break;
      const question: Question = {
        service: parts.accounts.settings.service,
        at: parts.now(),
        onTests: true,
        hashes: codes.map((code) => this.used.hashOf(code)),
      };
      const answer = await ask(peer, question, WITHIN_MS);
      if (!answer.ok) break;
      const { reply } = answer;
      const clashes =
        reply.service === question.service ? [] : codes.filter((_, at) => reply.used[at] === true);
      found += await this.keep(clashes, reply);
      for (const code of codes) answered.add(code);
    }
    return found;
  }

  /** One fact for each code and home, on the server's own chain. */
  private keep(codes: readonly Code[], reply: Reply): Promise<number> {
    const { parts, reader } = this.needs;
    if (codes.length === 0) return Promise.resolve(0);
    return parts.ledger.lock(async () => {
      const home = await reader.read();
      const at = instantOf(parts.now());
      const facts = codes
        .filter((code) => !isTold(home, code, reply.service))
        .map(
          (code): DatedFact => ({
            kind: 'code.elsewhere',
            data: { code, service: reply.service },
            ...(reply.title !== undefined && { private: { title: reply.title } }),
            ...{ at, by: GROUP },
          }),
        );
      if (facts.length > 0)
        await keepAsArrived(parts.ledger, pen(facts, await serverDesk(parts.ledger, parts.random)));
      return facts.length;
    });
  }
}

const isTold = (home: Parameters<typeof factsIn>[0], code: Code, service: string): boolean =>
  ofKind(factsIn(home, 'code', code), 'code.elsewhere').some(
    ({ data }) => data.service === service,
  );
