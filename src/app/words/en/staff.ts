import type { Role, Skill } from '../../../care/staff/facts.ts';
import type { LanguageTools } from '../language-tools.ts';

/** Colleagues: who they are, what they may do, whom they know. */
export function staffWords({ dates, plural, list }: LanguageTools) {
  const skills: Record<Skill, string> = { swab: 'May swab', record: 'May record' };
  const roleHints: Record<Role, string> = {
    worker: 'Takes part in rounds, adds and amends people.',
    senior: 'Writes decisions too, and settles what does not fit.',
    manager: 'Gives roles too, and confirms the policy.',
  };
  return {
    title: 'Staff',
    skills,
    roleHints,
    count: (count: number) =>
      plural(count, { one: '1 colleague works here.', other: `${count} colleagues work here.` }),
    add: 'Add a colleague',
    bringIn: 'Bring in a list',
    left: (count: number) =>
      plural(count, {
        one: '1 colleague who has left',
        other: `${count} colleagues who have left`,
      }),
    noRole: 'no role',
    unnamed: 'no name',
    chips: {
      ended: (skill: string, on: string) => `${skill}: ended ${dates.dayMonth(on)}`,
      soon: (skill: string, on: string) => `${skill}: ends ${dates.dayMonth(on)}`,
      until: (skill: string, on: string) => `${skill}: until ${dates.shortDate(on)}`,
      none: (skill: string) => `${skill}: no training`,
    },
    leftOn: (on: string) => `left ${dates.shortDate(on)}`,
    parts: {
      who: 'Who',
      training: 'Training',
      knows: 'Knows by sight',
      history: 'How do we know?',
    },
    role: 'Role',
    phone: 'Phone',
    amend: 'Amend',
    amendKnows: 'Amend whom they know',
    knowsNobody: 'Nobody is named yet.',
    names: (names: readonly string[]) => `${list(names)}.`,
    goes: 'Leaves us',
    returns: 'Works here again',
    until: (on: string) => `Until ${dates.date(on)}.`,
    ended: (on: string) => `Ended on ${dates.date(on)}.`,
    endsSoon: (on: string) => `Ends soon, on ${dates.date(on)}.`,
    noTraining: 'No training is written down.',
    unknown: 'This colleague is not on this tablet.',
    form: {
      addTitle: 'Add a colleague',
      editTitle: (name: string) => `Amend: ${name}`,
      name: 'Full name',
      called: 'Likes to be called',
      phone: 'Phone',
      phoneHint: 'For work alone. It is shown to colleagues.',
      role: 'What may they do here?',
      skill: { swab: 'Swab training ends on', record: 'Record training ends on' },
      skillHint: 'You have seen the paper. The last day still counts.',
      pinNext: 'Signing in comes next: they set a PIN on a tablet.',
    },
    knowsForm: {
      title: (name: string) => `Whom does ${name} know by sight?`,
      lead: 'Only those whose face they could pick among others.',
      people: 'People here',
    },
    leftForm: {
      leftTitle: (name: string) => `${name} leaves us`,
      leftLead: 'From that day on they cannot sign in or be in a pair.',
      leftOn: 'First day away',
      backTitle: (name: string) => `${name} works here again`,
      backLead: 'They can sign in again. Check their training.',
      backOn: 'First day back',
    },
  };
}
