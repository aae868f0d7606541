import type { LanguageTools } from '../language-tools.ts';

export function doorWords({ dates, plural }: LanguageTools) {
  const minutes = (ms: number) => {
    const count = Math.max(1, Math.ceil(ms / 60_000));
    return plural(count, { one: '1 minute', other: `${count} minutes` });
  };
  return {
    starting: 'Opening …',
    missing: {
      title: 'Tallyround cannot work here yet.',
      'secure-context':
        'This address is not safe enough. Use the one that begins with https, or ask the manager for it.',
      storage: 'This browser keeps nothing. Leave private browsing, or use another browser.',
      locks: 'This browser is too old. Use a newer one.',
      wasm: 'This browser is too old. Use a newer one.',
    },
    title: 'Who is there?',
    tablet: (name: string) => `This is the tablet "${name}".`,
    who: 'Your name',
    somebodyElse: 'Somebody else',
    name: 'Your first name or full name',
    pin: 'Your PIN',
    newPin: 'A new PIN of your own',
    newPinHint: 'Six digits or more. Not a birth date, not 123456.',
    newPinFirst: 'The first time, pick a PIN that only you know.',
    signIn: 'Sign in',
    firstTime: 'The first time on a tablet, it needs to reach the server.',
    wrong: 'That name and PIN do not go together. Try again.',
    wait: (ms: number) => `Too many wrong tries. Wait ${minutes(ms)}, or ask a manager.`,
    noContact: 'The server cannot be reached. Sign in once on this tablet when it can.',
    mustChange: 'Pick a new PIN of your own now.',
    pinRefused: {
      'too-short': 'The PIN is too short. Use six digits or more.',
      'too-long': 'The PIN is too long. Use twelve digits or fewer.',
      'not-digits': 'A PIN has digits only.',
      'too-plain': 'That PIN is easy to guess. Pick another.',
      'same-as-before': 'That is your old PIN. Pick another.',
    },
    leaseOver:
      'This tablet has not met the server for too long. Bring it to where there is a signal.',
    revoked: 'Your PIN is not good any more. Ask a manager.',
    refused: 'The server said no. Ask a manager.',
    enrol: {
      title: 'Set up this tablet',
      why: 'A manager does this once. Then staff can work on it without a signal.',
      deviceName: 'What shall this tablet be called?',
      deviceHint: 'Such as "blue tablet" or "upstairs".',
      manager: "The manager's name",
      managerPin: "The manager's PIN",
      seen: 'Have you seen these on the tablet itself?',
      osLock: 'A screen lock is on',
      disk: 'The storage is encrypted',
      both: 'See to the screen lock and the encryption first. A PIN alone does not protect a lost tablet.',
      go: 'Set it up',
      needsManager: 'Only a manager can set up a tablet.',
      noContact: 'The server cannot be reached. A tablet is set up where there is a signal.',
      keyGone: 'This tablet was said to be lost. Its old records here cannot be read any more.',
      anew: 'Begin anew with this tablet',
      done: 'This tablet is ready.',
    },
    elsewhere: {
      title: 'Tallyround is open in another tab.',
      body: 'Only one at a time, so that nothing is done twice.',
      useHere: 'Use it here',
    },
    clock: {
      title: 'Is the time right?',
      ask: (at: string) => `It is ${dates.day(at)}, ${dates.time(at)}. Right?`,
      why: 'Every record carries the time. A wrong clock mixes up what came first.',
      right: 'Yes, that is right',
      set: 'No, set it',
      day: 'Today is',
      time: 'The time now',
      keep: 'Keep this time',
    },
    hands: {
      title: 'Change hands',
      body: 'Sign in as yourself. The screen stays where it is.',
    },
    update: 'A newer Tallyround is ready.',
    updateNow: 'Begin it now',
    problems: {
      retired:
        'This tablet was taken out of use. What it holds stays here. A manager can set it up again.',
      'device-unknown': 'The server does not know this tablet. A manager can set it up again.',
      'program-old':
        'This Tallyround is too old. It sends, but gets nothing new. Begin the new one.',
      'server-old': "The server's program is older than this one. It waits.",
      'server-unsound':
        'What the server sent does not hold together. Nothing of it was kept. Tell a manager.',
      damaged:
        'A part of what rests here could not be read. It was fetched again where that was possible.',
      'server-broken': 'The server cannot write. All is kept here. Tell a manager.',
    },
  };
}
