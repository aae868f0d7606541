import type { RuleId } from '../../../care/policy/rules.ts';
import type { Outcome } from '../../../care/results/facts.ts';
import type { Role } from '../../../care/staff/facts.ts';
import type { Caution } from '../../../care/support/facts.ts';

/** Words for the closed lists of the core: what a caution, a result, a rule or a role is called. */
export function careWords() {
  const cautions: Record<Caution, string> = {
    nosebleed: 'nosebleed lately',
    'facial-injury': 'injury to the face',
    'nasal-surgery': 'operation on the nose',
    'bleeding-disorder': 'bleeds easily',
    'blood-thinner': 'takes a blood thinner',
    'airway-stoma': 'breathes through a stoma',
    'biting-risk': 'may bite',
    'choking-risk': 'may choke',
    'seizure-risk': 'may have a seizure',
    'septal-deviation': 'crooked nose inside',
  };
  const outcomes: Record<Outcome, string> = {
    positive: 'positive',
    negative: 'negative',
    void: 'void',
    inconclusive: 'not clear',
    withdrawn: 'taken back',
  };
  const rules: Record<RuleId, string> = {
    routine: 'routine round',
    symptoms: 'symptoms',
    contact: 'contact with a case',
    'whole-home': 'whole-home round',
    return: 'back from hospital or leave',
    admission: 'moved in',
    'repeat-after-void': 'last test was void',
    'repeat-after-inconclusive': 'last test was not clear',
    'repeat-after-stop': 'stopped last time',
    'repeat-after-kit-fault': 'kit failed last time',
    'repeat-too-old': 'last tube grew too old',
  };
  const roles: Record<Role, string> = { worker: 'worker', senior: 'senior', manager: 'manager' };
  return { cautions, outcomes, rules, roles };
}
