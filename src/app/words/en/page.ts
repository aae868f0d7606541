import type { LanguageTools } from '../language-tools.ts';

export function pageWords({ plural, dates }: LanguageTools) {
  return {
    product: 'Tallyround',
    skip: 'Skip to the main part',
    nav: 'Parts of Tallyround',
    signedIn: 'Signed in:',
    lock: 'Lock',
    hands: 'Change hands',
    sync: {
      opening: 'Still reading older records. What you see may change.',
      sent: (count: number) =>
        plural(count, { one: 'The last one is sent', other: `All ${count} sent` }),
      nothing: 'Nothing waiting',
      kept: (count: number) => `Kept here, ${count} waiting`,
      sending: (count: number) => `Sending ${count}`,
      lastMet: (at: string) => `Last met the server ${dates.dayTime(at)}.`,
      trouble: 'Not sent. All is kept here. Tell a senior.',
    },
    storage: {
      low: 'This tablet is nearly full. Send what waits before a new turn.',
      mayGo: 'This tablet may clear its copy. Send what waits soon.',
    },
  };
}
