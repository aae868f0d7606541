import type { PersonWord } from '../../../care/policy/policy.ts';

const forms: Readonly<Record<PersonWord, { one: string; many: string }>> = {
  resident: { one: 'resident', many: 'residents' },
  tenant: { one: 'tenant', many: 'tenants' },
  supported: { one: 'person we support', many: 'people we support' },
};

export function personWords(word: PersonWord): { readonly one: string; readonly many: string } {
  return forms[word];
}
