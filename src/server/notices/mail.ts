import { createTransport } from 'nodemailer';
import type { Home } from '../../care/home.ts';
import type { Instant } from '../../care/time.ts';
import { pendingIn } from './pending.ts';

export interface MailOptions {
  /** smtp:// or smtps:// with user and password where asked; from the environment, never from an argument. */
  readonly smtp: string;
  readonly from: string;
  readonly to: readonly string[];
}

/** What was told of before, kept where a new start finds it. */
export interface ToldBefore {
  has(key: string): boolean;
  add(keys: readonly string[]): void;
}

/** Nothing of health, nobody's name: a telephone shows a subject to everybody around it. */
const SUBJECT = 'Tallyround: something needs you';
const body = (count: number): string =>
  [
    count === 1
      ? 'One thing has come that nobody has in hand.'
      : `${count} things have come that nobody has in hand.`,
    'Open Tallyround on a tablet to see what, and put a name to it.',
    '',
    'This letter says no more on purpose.',
  ].join('\n');

/** Tells whoever is on call of what is new, once each. Answers how many were told of. */
export async function sendNotices(
  home: Home,
  now: Instant,
  { mail, told }: { readonly mail: MailOptions; readonly told: ToldBefore },
): Promise<number> {
  const fresh = pendingIn(home, now).filter(({ key }) => !told.has(key));
  if (fresh.length === 0) return 0;
  const transport = createTransport({
    url: mail.smtp,
    ...{ connectionTimeout: 15_000, greetingTimeout: 15_000, socketTimeout: 30_000 },
  });
  try {
    await transport.sendMail({
      ...{ from: mail.from, to: [...mail.to], subject: SUBJECT, text: body(fresh.length) },
      // No pictures, no links to fetch, nothing read from files.
      ...{ disableFileAccess: true, disableUrlAccess: true },
    });
  } finally {
    transport.close();
  }
  // Only once it is gone: what could not be sent is tried again.
  told.add(fresh.map(({ key }) => key));
  return fresh.length;
}
