import { join } from 'node:path';
import { instantOf } from '../../care/time.ts';
import type { Parts } from '../parts.ts';
import type { HomeReader } from '../service/home-reader.ts';
import type { Options } from '../start/options.ts';
import { sendNotices } from './mail.ts';
import { toldFile } from './told-file.ts';

const EVERY = 60_000;

/** Looks every minute whether somebody has to be written to. Answers what ends it; undefined if nobody is. */
export function openNotices(
  { now }: Pick<Parts, 'now'>,
  reader: HomeReader,
  { notify, mailFrom, smtp, data }: Pick<Options, 'notify' | 'mailFrom' | 'smtp' | 'data'>,
  onFault: (error: unknown) => void,
): (() => void) | undefined {
  if (notify.length === 0 || smtp === undefined || mailFrom === undefined) return undefined;
  const told = toldFile(join(data, 'told-by-mail.txt'));
  const mail = { smtp, from: mailFrom, to: notify };
  let busy = false;
  const look = async (): Promise<void> => {
    if (busy) return;
    busy = true;
    try {
      await sendNotices(await reader.read(), instantOf(now()), { mail, told });
    } catch (error) {
      onFault(error);
    } finally {
      busy = false;
    }
  };
  const timer = setInterval(() => void look(), EVERY);
  timer.unref();
  void look();
  return () => clearInterval(timer);
}
