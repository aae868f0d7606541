import type { DemoStaff } from '../demo/source.ts';
import { qrText } from '../home-network/qr.ts';
import type { FirstManager } from '../service/first-manager.ts';

/** What whoever starts the server is told once it listens. */
export interface Told {
  readonly url: string;
  readonly title: string;
  readonly data: string;
  /** Where what was there before has been moved. */
  readonly aside?: string;
  readonly manager?: FirstManager;
  readonly demo: readonly DemoStaff[];
  readonly home?: HomeTold;
  /** Other machines can reach it, but not over TLS of its own or of a proxy that was named. */
  readonly openInClear: boolean;
  readonly withoutApp: boolean;
}

export interface HomeTold {
  readonly guideUrl: string;
  readonly fingerprint: string;
  /** The certificate authority is another than before. */
  readonly replaced: boolean;
}

export function words(told: Told, isTerminal: boolean): string {
  return [
    told.aside !== undefined && [`What was there before is kept in ${told.aside}`],
    [`${told.title} is ready:  ${told.url}`, `Everything is kept in ${told.data}`],
    told.withoutApp && ['The app is not built; only its calls are answered. Use npm start.'],
    told.manager && managerWords(told.manager),
    told.demo.length > 0 && demoWords(told.demo),
    told.home && homeWords(told.home, isTerminal),
    told.openInClear && clearWords,
    ['To stop it press Ctrl+C.'],
  ]
    .filter((part) => part !== false && part !== undefined)
    .map((lines) => lines.join('\n'))
    .join('\n\n');
}

const managerWords = ({ name, pin }: FirstManager): readonly string[] => [
  `First manager: ${name}. PIN for the first sign-in: ${pin}`,
  'Write it down now; it is not shown again. A new one is asked for at once.',
];

const demoWords = (staff: readonly DemoStaff[]): readonly string[] => [
  'This is an invented home. Nobody in it is real, and nobody may be cared for by it.',
  'Sign in with a name and a PIN:',
  ...staff.map(({ name, role, pin }) => `  ${name.padEnd(24)} ${role.padEnd(8)} ${pin}`),
  'The first time on a tablet, a manager signs in and enrols it.',
];

const homeWords = (
  { guideUrl, fingerprint, replaced }: HomeTold,
  isTerminal: boolean,
): readonly string[] => [
  ...(replaced
    ? ['This machine has a new address, so its certificate is new. Get every tablet ready again.']
    : []),
  `To get a tablet ready, open on it:  ${guideUrl}`,
  ...(isTerminal ? [qrText(guideUrl)] : []),
  'The page there shows this number. Compare before you trust:',
  `  ${fingerprint.match(/(?:..:?){1,16}/g)?.join('\n  ') ?? fingerprint}`,
];

const clearWords: readonly string[] = [
  'Careful: other machines can reach this server without encryption. PINs could be read on the way,',
  'and a tablet’s camera and offline store will not work. Use --home-network, or put a proxy with',
  'HTTPS in front and name it with --proxy.',
];
