import type { Code } from '../../care/kind.ts';
import { policyOn } from '../../care/policy/in-force.ts';
import { dayOf, instantOf } from '../../care/time.ts';
import type { UsedElsewhere } from '../../procedures/access/wire.ts';
import { CheckUsed } from './check-used.ts';
import type { GroupNeeds } from './needs.ts';
import { UsedCodes } from './used-codes.ts';
import { FRESH_MS, proofOf, type Question, type Reply, replyProof, sameProof } from './wire.ts';

/** A tablet waits a second and a half for its server: half of what staff bear before they look away. */
const BEDSIDE_MS = 1200;

/** This home among the homes of its group. */
export class Group {
  readonly check: CheckUsed;
  private readonly used: UsedCodes;

  constructor(private readonly needs: GroupNeeds) {
    this.used = new UsedCodes(needs.reader, needs.keys.codes);
    this.check = new CheckUsed(needs, this.used);
  }

  /** For a tablet, before a kit is opened: which other homes have used its code. */
  async usedElsewhere(code: string): Promise<UsedElsewhere> {
    const { peers, ask, parts } = this.needs;
    const question: Question = {
      service: parts.accounts.settings.service,
      at: parts.now(),
      onTests: false,
      hashes: [this.used.hashOf(code)],
    };
    const asked = await Promise.all(peers.map((peer) => ask(peer, question, BEDSIDE_MS)));
    const replies = asked.flatMap((each) => (each.ok ? each.reply : []));
    const others = replies.filter(({ service }) => service !== question.service);
    const yes = others.filter(({ used }) => used[0] === true);
    return {
      group: true,
      used: yes.length > 0,
      homes: yes.flatMap(({ title }) => title ?? []),
      complete: replies.length === peers.length,
    };
  }

  /** Whether a question comes from a home of the group, and is of now. */
  isMember(question: Question, proof: unknown): boolean {
    const { keys, parts } = this.needs;
    const fresh = Math.abs(parts.now() - question.at) <= FRESH_MS;
    return sameProof(proof, proofOf(keys.calls, question)) && fresh;
  }

  /** For another home: yes or no for each hash, and nothing else but what this home calls itself. */
  async answer(question: Question): Promise<Reply> {
    const { keys, parts } = this.needs;
    const found = await this.used.find(question.hashes);
    const title = await this.titleTold();
    const reply = {
      service: parts.accounts.settings.service,
      ...(title !== undefined && { title }),
      used: found.map((code) => code !== undefined),
    };
    // Both homes hold their test until a senior of each has settled it: this one asks back.
    if (question.onTests)
      this.check.lookAgain(
        found.filter((code): code is Code => code !== undefined),
        question.service,
      );
    return { ...reply, proof: replyProof(keys.calls, proofOf(keys.calls, question), reply) };
  }

  private async titleTold(): Promise<string | undefined> {
    const { parts, reader } = this.needs;
    const { title, zone } = parts.accounts.settings;
    const { policy } = policyOn(await reader.read(), dayOf(instantOf(parts.now()), zone));
    return policy.group?.titleTold.value === true ? title : undefined;
  }
}
