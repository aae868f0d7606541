import type { LanguageTools } from '../language-tools.ts';

export function tabletWords({ dates }: LanguageTools) {
  return {
    title: 'Tablets and PINs',
    intro: 'Only a manager sees this page. It needs the server.',
    needsServer:
      'The server cannot be reached, or you have not signed in to it. Lock, and sign in again.',
    tablets: 'Tablets',
    name: 'Tablet',
    met: 'Last met',
    never: 'not yet',
    state: 'State',
    states: { inUse: 'in use', retired: 'taken out of use', lost: 'lost' },
    thisOne: 'this one',
    at: (instant: string) => dates.dayTime(instant),
    retire: 'Take out of use',
    lost: 'It is lost',
    lostTitle: (name: string) => `Is "${name}" lost?`,
    lostBody:
      'Its key is deleted here. What it has not sent can then be read by nobody. Treat it as a breach.',
    lostYes: 'It is lost: delete its key',
    retireTitle: (name: string) => `Take "${name}" out of use?`,
    retireBody:
      'It can send and get nothing more. What it holds stays on it. A manager can set it up again.',
    retireYes: 'Take it out of use',
    pins: 'PINs',
    colleague: 'Colleague',
    role: 'Role',
    pin: 'PIN',
    has: 'has a PIN',
    hasNot: 'has no PIN',
    mustChange: 'must pick a new one',
    set: 'Give a PIN',
    setTitle: (name: string) => `A PIN for ${name}`,
    setBody: 'They pick one of their own when they first sign in. Tell it to nobody else.',
    newPin: 'The first PIN',
    newPinHint: 'Six digits or more. Not a birth date, not 123456.',
    keep: 'Keep it',
    end: 'End the PIN',
    did: 'Done.',
    failed: 'The server did not take that. Try again.',
    poor: 'That PIN will not do. Six digits or more, not easy to guess.',
  };
}
