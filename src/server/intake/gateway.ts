import { readHl7 } from '../../exchange/results/hl7v2/read-hl7.ts';
import { placeText } from '../../exchange/results/reported.ts';
import { mappingOf } from '../../procedures/take-in-results.ts';
import type { Parts } from '../parts.ts';
import type { HomeReader } from '../service/home-reader.ts';
import type { Listener, MllpOptions } from './mllp.ts';
import { listenMllp } from './mllp.ts';
import { takeIn } from './take-in.ts';

/** Takes in what a gateway on this machine sends, and says of each message whether it was kept. */
export function openGateway(
  parts: Parts,
  reader: HomeReader,
  { port, onStranger }: Pick<MllpOptions, 'port' | 'onStranger'>,
): Promise<Listener> {
  const { zone } = parts.accounts.settings;
  return listenMllp({
    port,
    onStranger,
    now: parts.now,
    onMessage: async (text) => {
      const mapping = mappingOf(await reader.read());
      const words = new Map(mapping?.words.map(({ says, means }) => [says, means]) ?? []);
      const read = readHl7(text, { zone, words });
      if (!read.ok) {
        const where = read.place === undefined ? '' : ` (${placeText(read.place)})`;
        return { code: 'AR', detail: `${read.detail}${where}` };
      }
      const taken = await takeIn(parts, reader, { reports: read.reports, source: 'hl7' });
      return taken.ok ? { code: 'AA', detail: '' } : { code: 'AR', detail: taken.reason };
    },
  });
}
