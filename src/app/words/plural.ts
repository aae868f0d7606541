/** One form for each plural category the language has; `other` always. */
export type PluralForms = Readonly<
  Partial<Record<Intl.LDMLPluralRule, string>> & { other: string }
>;

export type Plural = (count: number, forms: PluralForms) => string;

/** Picks the form for a count by the language's rule (Unicode CLDR, through Intl.PluralRules). */
export function pluralOf(locale: string): Plural {
  const rules = new Intl.PluralRules(locale);
  return (count, forms) => forms[rules.select(count)] ?? forms.other;
}
