import { Agent as PlainAgent, request as plainRequest } from 'node:http';
import { Agent, request } from 'node:https';
import { rootCertificates } from 'node:tls';
import * as v from 'valibot';
import {
  PATH,
  PROOF_HEADER,
  proofOf,
  type Question,
  type Reply,
  replyProof,
  replySchema,
  sameProof,
} from './wire.ts';

/** A page of yes and no is some kilobytes. */
const MOST_BYTES = 64 * 1024;

/** What came of asking: an answer, or none. Why there is none says nothing about any code. */
export type Asked =
  | { readonly ok: true; readonly reply: Reply }
  | { readonly ok: false; readonly reason: 'no-contact' | 'not-a-member' | 'turned-away' };

/** Asks one home of the group. Never throws, and never takes longer than it is given. */
export type AskPeer = (peer: URL, question: Question, within: number) => Promise<Asked>;

/** `authorities`: certificates (PEM) of homes that have one of their own, trusted beside the public ones. */
export function askingPeers(key: Uint8Array, authorities: readonly string[]): AskPeer {
  const trusted = authorities.length > 0 ? { ca: [...rootCertificates, ...authorities] } : {};
  const secure = new Agent({ keepAlive: true, rejectUnauthorized: true, ...trusted });
  const plain = new PlainAgent({ keepAlive: true });
  return async (peer, question, within) => {
    const proof = proofOf(key, question);
    const heard = await post(new URL(PATH, peer), {
      body: JSON.stringify(question),
      headers: { 'content-type': 'application/json', [PROOF_HEADER]: proof },
      agent: peer.protocol === 'https:' ? secure : plain,
      within,
    });
    if (heard === undefined) return { ok: false, reason: 'no-contact' };
    if (heard.status !== 200) return { ok: false, reason: 'turned-away' };
    const read = v.safeParse(replySchema, heard.json);
    const fits =
      read.success &&
      read.output.used.length === question.hashes.length &&
      sameProof(read.output.proof, replyProof(key, proof, read.output));
    return fits ? { ok: true, reply: read.output } : { ok: false, reason: 'not-a-member' };
  };
}

interface Sending {
  readonly body: string;
  readonly headers: Readonly<Record<string, string>>;
  readonly agent: Agent | PlainAgent;
  readonly within: number;
}

/** Undefined where nothing sensible came back in time. Redirections are not followed. */
const post = (
  url: URL,
  { body, headers, agent, within }: Sending,
): Promise<{ readonly status: number; readonly json: unknown } | undefined> =>
  new Promise((resolve) => {
    const send = url.protocol === 'https:' ? request : plainRequest;
    const signal = AbortSignal.timeout(within);
    const call = send(url, { method: 'POST', headers, agent, signal }, (answer) => {
      const pieces: Buffer[] = [];
      let size = 0;
      answer.on('data', (piece: Buffer) => {
        size += piece.length;
        if (size > MOST_BYTES) call.destroy();
        else pieces.push(piece);
      });
      answer.on('error', () => resolve(undefined));
      answer.on('close', () => resolve(undefined));
      answer.on('end', () => {
        const text = Buffer.concat(pieces).toString('utf8');
        resolve({ status: answer.statusCode ?? 0, json: parsed(text) });
      });
    });
    call.on('error', () => resolve(undefined));
    call.end(body);
  });

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
