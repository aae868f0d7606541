import type { StepEnd } from '../../../care/practice/facts.ts';
import type { LanguageTools } from '../language-tools.ts';

/** Practice, step by step, and what is told of when somebody may be ready. */
export function practisingWords({ dates, plural }: LanguageTools) {
  const ends: Record<StepEnd, string> = {
    done: 'Done',
    'not-yet': 'Not this time',
    distressed: 'It upset them',
  };
  const endHints: Record<StepEnd, string> = {
    done: 'Next time: one step on.',
    'not-yet': 'Next time: the same step.',
    distressed: 'Next time: one step back.',
  };
  return {
    none: 'The plan asks for no practice.',
    ask: 'Ask for practice',
    askTitle: 'Practice before a swab',
    askLead: 'Small steps, one a session. They set the pace.',
    from: 'Begin with which step?',
    wanted: 'Does the plan ask for practice?',
    wantedYes: 'Yes',
    wantedNo: 'No, not now',
    amend: 'Amend the practice',
    sessionTitle: (name: string) => `Practice with ${name}`,
    step: (number: number, of: number) => `Step ${number} of ${of}`,
    minutes: (count: number) => plural(count, { one: '1 minute', other: `${count} minutes` }),
    how: 'How did it end?',
    ends,
    endings: {
      done: `${ends.done}. ${endHints.done}`,
      'not-yet': `${ends['not-yet']}. ${endHints['not-yet']}`,
      distressed: `${ends.distressed}. ${endHints.distressed}`,
    },
    endedWell: 'We went back to something easy and ended there',
    endWell: 'End on something that goes well. Stop at the first sign of distress.',
    never: 'Never hold anybody. A no ends the session.',
    ready: 'All steps are done.',
    readyLead: 'It is still their choice each time.',
    soFar: (reached: number, of: number) => `${reached} of ${of} steps done.`,
    nextStep: (title: string) => `Next: ${title}.`,
    drawing: (sessions: number, reached: number, of: number) =>
      `${plural(sessions, { one: '1 session', other: `${sessions} sessions` })}, ${reached} of ${of} steps done`,
    noSessions: 'No session yet.',
    table: 'The sessions',
    when: 'When',
    whatStep: 'Step',
    ended: 'How it ended',
    who: 'With whom',
    forecast: 'When may they be ready?',
    tooFew: (have: number, need: number) => `Too few sessions here to say: ${have} of ${need}.`,
    range: (low: number, high: number | undefined) =>
      high === undefined
        ? `${low} more sessions, or many more.`
        : `${low} to ${high} more sessions, in 8 of 10 cases.`,
    days: (low: string, high: string | undefined) =>
      high === undefined
        ? `Not before ${dates.date(low)}.`
        : `From ${dates.shortDate(low)} to ${dates.shortDate(high)}.`,
    byRound: (percent: number, day: string) =>
      `By the round on ${dates.date(day)}: ${percent} in 100.`,
    model: (sessions: number) =>
      `Learnt from ${sessions} sessions here. It takes all people to be alike. You know more.`,
    policy: {
      group: 'Practice',
      every: 'A session every',
      fewest: 'Sessions before a forecast',
      step: (title: string, minutes: number) => `${title}: ${minutes} min`,
    },
  };
}
