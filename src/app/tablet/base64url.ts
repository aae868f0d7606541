import { base64url } from '../../ledger/ids.ts';

export { base64url };

/** RFC 4648 section 5, as the server writes keys. */
export function fromBase64url(text: string): Uint8Array<ArrayBuffer> {
  const binary = atob(text.replaceAll('-', '+').replaceAll('_', '/'));
  return Uint8Array.from(binary, (letter) => letter.charCodeAt(0));
}
