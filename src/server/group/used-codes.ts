import { codeUse } from '../../care/custody/code.ts';
import type { Home } from '../../care/home.ts';
import { keysOn } from '../../care/home.ts';
import type { Code } from '../../care/kind.ts';
import type { HomeReader } from '../service/home-reader.ts';
import { keyed } from './secret.ts';

/**
 * The codes this home has met, by their keyed hashes. Worked out from the ledger and held in memory
 * alone: there is no second record that could say something else, and nothing to back up. Whether a
 * code is used is asked of the ledger each time, because an entry may have been put right.
 */
export class UsedCodes {
  private readonly byHash = new Map<string, Code>();
  private met = 0;

  constructor(
    private readonly reader: HomeReader,
    private readonly key: Uint8Array,
  ) {}

  hashOf(code: string): string {
    return keyed(this.key, code);
  }

  /** The code of each hash where it is used here, or was put aside; undefined where it is free. */
  async find(hashes: readonly string[]): Promise<readonly (Code | undefined)[]> {
    const home = await this.level();
    return hashes.map((hash) => {
      const code = this.byHash.get(hash);
      return code !== undefined && codeUse(home, code).use !== 'free' ? code : undefined;
    });
  }

  /** So many codes, at most, that stand on a test here and are not among these. */
  async onTests(but: ReadonlySet<Code>, most: number): Promise<readonly Code[]> {
    const home = await this.level();
    const found: Code[] = [];
    for (const code of this.byHash.values()) {
      if (but.has(code) || codeUse(home, code).use !== 'on-test') continue;
      found.push(code);
      if (found.length === most) break;
    }
    return found;
  }

  /** Codes only ever come to a shelf, at its end: those met before are stepped over. */
  private async level(): Promise<Home> {
    const home = await this.reader.read();
    let at = 0;
    for (const code of keysOn(home, 'code')) {
      at += 1;
      if (at > this.met) this.byHash.set(this.hashOf(code), code as Code);
    }
    this.met = at;
    return home;
  }
}
