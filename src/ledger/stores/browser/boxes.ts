import type { Body, Confirmed, LedgerFact, Pending, Written } from '../../fact.ts';
import { encodeBlock, entriesOf, factsOf, type Which } from './block.ts';
import type { Cipher } from './cipher.ts';
import type { LogRecord, PendingRecord } from './database.ts';
import { guarded } from './errors.ts';

/** Records of the database, sealed and opened. All of it happens outside any transaction. */
export class Boxes {
  private readonly encoder = new TextEncoder();
  private readonly decoder = new TextDecoder();

  constructor(private readonly cipher: Cipher) {}

  async sealBlock(number: number, entries: readonly Confirmed[]): Promise<LogRecord> {
    const last = entries.at(-1);
    if (!last) throw new RangeError('an empty block');
    const sealed = await this.cipher.seal(encodeBlock(entries), `log/${number}`);
    return { position: last.position, chain: last.chain, sealed };
  }

  openBlock(number: number, { sealed }: LogRecord): Promise<readonly Confirmed[]> {
    return this.open(sealed, `log/${number}`, entriesOf);
  }

  /** The facts at places of the block (0 the first) that pass. */
  openFacts(number: number, { sealed }: LogRecord, which: Which): Promise<readonly LedgerFact[]> {
    return this.open(sealed, `log/${number}`, (plain) => factsOf(plain, which));
  }

  async sealPending(
    place: number,
    { id, body, private: record, aside }: Pending,
  ): Promise<PendingRecord> {
    const { device, seq } = JSON.parse(body) as Body;
    const plain = JSON.stringify(record === undefined ? [body] : [body, record]);
    const sealed = await this.cipher.seal(this.encoder.encode(plain), `pending/${place}`);
    return { id, device, seq, sealed, ...(aside !== undefined && { aside }) };
  }

  async openPending(place: number, { id, aside, sealed }: PendingRecord): Promise<Pending> {
    const [body, record] = await this.open(
      sealed,
      `pending/${place}`,
      (plain) => JSON.parse(this.decoder.decode(plain)) as [string, string?],
    );
    const written: Written = record === undefined ? { id, body } : { id, body, private: record };
    return aside === undefined ? written : { ...written, aside };
  }

  sealText(text: string, place: string): Promise<Uint8Array<ArrayBuffer>> {
    return this.cipher.seal(this.encoder.encode(text), place);
  }

  openText(sealed: Uint8Array<ArrayBuffer>, place: string): Promise<string> {
    return this.open(sealed, place, (plain) => this.decoder.decode(plain));
  }

  private open<T>(
    sealed: Uint8Array<ArrayBuffer>,
    place: string,
    read: (plain: Uint8Array) => T,
  ): Promise<T> {
    return guarded(place, async () => read(await this.cipher.open(sealed, place)));
  }
}
