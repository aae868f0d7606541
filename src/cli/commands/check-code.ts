import * as v from 'valibot';
import { checkCharacters, passesCheck } from '../../statistics/identity/check-characters.ts';
import { findNearDuplicates } from '../../statistics/identity/find-near-duplicates.ts';
import { findScheme } from '../../statistics/identity/find-scheme.ts';
import { undetectedErrorRates } from '../../statistics/identity/undetected-error-rates.ts';
import { given, type Outcome } from '../../statistics/refusal/refusal.ts';
import { statisticCommand } from '../statistic-command.ts';

const input = v.object({
  scheme: v.string(),
  /** Whole codes, check characters at the end. */
  codes: v.optional(v.array(v.string()), []),
  /** Codes still without check characters. */
  payloads: v.optional(v.array(v.string()), []),
});

const rates = v.object({
  substitution: v.number(),
  adjacentTransposition: v.number(),
  jumpTransposition: v.number(),
  twin: v.number(),
  jumpTwin: v.number(),
  phonetic: v.number(),
});

const output = v.object({
  scheme: v.string(),
  source: v.string(),
  codes: v.array(v.object({ code: v.string(), passes: v.boolean() })),
  payloads: v.array(v.object({ payload: v.string(), check: v.nullable(v.string()) })),
  nearDuplicates: v.array(v.object({ first: v.string(), second: v.string() })),
  undetected: v.nullable(rates),
  caution: v.string(),
});

const CAUTION = "A check digit never catches a valid code of another person's tube.";

function run({
  scheme: name,
  codes,
  payloads,
}: v.InferOutput<typeof input>): Outcome<v.InferInput<typeof output>> {
  const found = findScheme(name);
  if (!found.ok) return found;
  const scheme = found.value;
  const longest = Math.max(
    0,
    ...codes.map((c) => c.length),
    ...payloads.map((p) => p.length + scheme.checkLength),
  );
  const undetected = undetectedErrorRates(scheme, longest);
  return given({
    scheme: scheme.name,
    source: scheme.source,
    codes: codes.map((code) => ({ code, passes: passesCheck(scheme, code) })),
    payloads: payloads.map((payload) => {
      const check = checkCharacters(scheme, payload);
      return { payload, check: check.ok ? check.value : null };
    }),
    nearDuplicates: [...findNearDuplicates(codes)],
    undetected: undetected.ok ? undetected.value : null,
    caution: CAUTION,
  });
}

export const { definition, register } = statisticCommand({
  name: 'check-code',
  description:
    'Whether codes agree with their check digits, what check digits payloads need, which codes are one\nslip apart from each other, and which slips the scheme would let pass.',
  input,
  output,
  example: { scheme: 'luhn', codes: ['79927398713', '79927398731'], payloads: ['7894'] },
  csv: { columns: 'code', read: (rows) => ({ codes: rows.map((r) => r['code'] ?? '') }) },
  run,
});
