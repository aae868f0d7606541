/** The due rules this program knows. A policy sets their values; a due line names the rule that made it. */
export const ruleIds = [
  'routine',
  'symptoms',
  'contact',
  'whole-home',
  'return',
  'admission',
  'repeat-after-void',
  'repeat-after-inconclusive',
  'repeat-after-stop',
  'repeat-after-kit-fault',
  'repeat-too-old',
] as const;
export type RuleId = (typeof ruleIds)[number];
