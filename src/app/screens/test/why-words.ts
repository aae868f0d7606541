import type { Home } from '../../../care/home.ts';
import type { Story } from '../../../care/rounds/story.ts';
import { namesIn } from '../../desk/names.ts';
import type { AllWords } from '../../words/en-all.ts';

/** Why this person was swabbed: the rule that put them on the round, and whose rules they were. */
export function whyOf(home: Home, story: Story, words: AllWords): string {
  const say = words.testPage;
  const listed = story.round?.people.find(({ person }) => person === story.turn.person);
  if (listed === undefined) return `${say.whyUnlisted} ${rulesOf(home, story, words)}`;
  const rule = listed.why === 'asked-for' ? words.rounds.askedFor : words.rules[listed.why];
  return `${say.why(rule)} ${rulesOf(home, story, words)}`;
}

export function rulesOf(home: Home, { policy: inForce }: Story, words: AllWords): string {
  const say = words.testPage;
  const { policy, confirmed } = inForce;
  const named = say.policy(policy.policy, policy.version);
  const by =
    confirmed === undefined
      ? say.policyNobody
      : say.policyBy(namesIn(home, words.refusals.somebody).staff(confirmed.by), confirmed.at);
  return [`${named}, ${by}`, ...(policy.invented ? [say.invented] : [])].join(' ');
}
