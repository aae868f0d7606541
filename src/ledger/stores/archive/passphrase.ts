import { Decrypter, Encrypter } from 'age-encryption';
import { utf8 } from './lines.ts';

/**
 * Backups are sealed in the age format (age-encryption.org/v1): scrypt (N = 2^18) of the passphrase,
 * then ChaCha20-Poly1305 in chunks, so a changed, reordered or cut-off file is refused. The reference
 * program opens it too, should ours not be at hand: `age --decrypt FILE`.
 */
export async function seal(
  lines: AsyncIterable<string>,
  passphrase: string,
  options: { readonly workFactor?: number } = {},
): Promise<ReadableStream<Uint8Array>> {
  const encrypter = new Encrypter();
  encrypter.setPassphrase(passphrase);
  if (options.workFactor !== undefined) encrypter.setScryptWorkFactor(options.workFactor);
  return encrypter.encrypt(utf8(lines));
}

export type Unsealed =
  | { readonly ok: true; readonly bytes: ReadableStream<Uint8Array> }
  | {
      readonly ok: false;
      readonly reason: 'wrong-passphrase' | 'not-sealed';
      readonly detail: string;
    };

/** Opens a sealed file. A fault further in makes the stream fail, at the chunk it is in. */
export async function unseal(
  file: ReadableStream<Uint8Array>,
  passphrase: string,
): Promise<Unsealed> {
  const decrypter = new Decrypter();
  decrypter.addPassphrase(passphrase);
  try {
    return { ok: true, bytes: await decrypter.decrypt(file) };
  } catch (error) {
    const detail = error instanceof Error ? error.message : String(error);
    const reason = detail.includes('no identity matched') ? 'wrong-passphrase' : 'not-sealed';
    return { ok: false, reason, detail };
  }
}
