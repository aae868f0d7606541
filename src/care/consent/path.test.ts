import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import windlestraw from '../../../policies/windlestraw-house-1.json' with { type: 'json' };
import { readPolicy } from '../policy/policy.ts';
import type { Part } from './facts.ts';
import { authorities, conclusions, limbs, parts, starts, told } from './facts.ts';
import type { DecisionAnswers } from './path.ts';
import { asksFor, lacksIn, onlyAsked } from './path.ts';

const read = readPolicy(windlestraw);
if (!read.ok) throw new Error(read.where);
const packs = read.policy.decisions!.packs;
const mca = packs.find(({ pack }) => pack === 'england-wales-mca-2005')!;
const crpd = packs.find(({ pack }) => pack === 'crpd-article-12')!;

const empty: DecisionAnswers = {
  ...{ start: '', conclusion: '', authority: '', told: [], document: '' },
  limbs: { understand: '', retain: '', weigh: '', communicate: '' },
  texts: Object.fromEntries(parts.map((part) => [part, ''])) as DecisionAnswers['texts'],
};
const everyText = Object.fromEntries(
  parts.map((part) => [part, 'said']),
) as DecisionAnswers['texts'];
const asked = (pack: typeof mca, answers: DecisionAnswers): string[] =>
  asksFor(pack, answers).map((ask) => (ask.ask === 'part' ? ask.part : ask.ask));
const sectionOf = (part: Part): string =>
  mca.questions.find((question) => question.part === part)?.section ?? '';

const can = { understand: 'can', retain: 'can', weigh: 'can', communicate: 'can' } as const;
const lacking: DecisionAnswers = {
  ...empty,
  ...{ start: 'in-doubt', conclusion: 'lacks-capacity', authority: 'best-interests' },
  told: [...told],
  limbs: { ...can, weigh: 'cannot' },
  texts: everyText,
};

// The structure of the Mental Capacity Act 2005 (c. 9), Part 1, section by section.
describe('the England and Wales pack follows the Act', () => {
  it('s.1(2) capacity is presumed: without a doubt nobody is examined', () => {
    const path = asked(mca, { ...empty, start: 'presumed', authority: 'asks-each-time' });
    expect(path).toEqual(['matter', 'information', 'start', 'authority', 'stop-rules']);
  });
  it('s.1(3) help comes before any conclusion of a lack of capacity', () => {
    expect(sectionOf('aids')).toContain('s.1(3)');
    const path = asked(mca, lacking);
    expect(path.indexOf('aids')).toBeLessThan(path.indexOf('conclusion'));
  });
  it('s.2(1), s.3(1) all four limbs and the causal link are asked before it is told on whose word', () => {
    const path = asked(mca, lacking);
    for (const limb of limbs) {
      expect(sectionOf(limb)).toMatch(/s\.3\(1\)\([abcd]\)/);
      expect(path.indexOf(limb)).toBeLessThan(path.indexOf('conclusion'));
    }
    expect(path).toContain('cause');
    expect(sectionOf('cause')).toContain('s.2(1)');
  });
  it('s.3(1) one limb that fails is enough; none that fails is no lack of capacity', () => {
    expect(lacksIn(mca, lacking)).toEqual([]);
    expect(lacksIn(mca, { ...lacking, limbs: can })).toEqual([
      { at: 'conclusion', why: 'does-not-follow' },
    ]);
    expect(
      lacksIn(mca, { ...lacking, conclusion: 'has-capacity', authority: 'asks-each-time' }),
    ).toContainEqual({ at: 'conclusion', why: 'does-not-follow' });
  });
  it('s.4 best interests: could they regain it, wishes, consulted; s.1(6) the less restrictive way', () => {
    for (const [part, section] of [
      ['regain', 's.4(3)'],
      ['wishes', 's.4(6)'],
      ['consulted', 's.4(7)'],
      ['options', 's.1(6)'],
    ] as const) {
      expect(asked(mca, lacking)).toContain(part);
      expect(sectionOf(part)).toContain(section);
      const without = { ...lacking, texts: { ...everyText, [part]: ' ' } };
      expect(lacksIn(mca, without)).toEqual([{ at: part, why: 'unanswered' }]);
    }
  });
  it('s.11(7)(a), s.20(1) an attorney or a deputy decides only where capacity is lacking', () => {
    for (const start of mca.starts) {
      expect(start.authorities).not.toContain('attorney');
      expect(start.authorities).not.toContain('deputy');
    }
    const own = mca.conclusions.find(({ conclusion }) => conclusion === 'has-capacity')!;
    expect(own.authorities).toEqual(['asks-each-time', 'refuses']);
  });
  it('ss.24 to 26 an advance refusal needs its paper, seen or said not to be', () => {
    const advance = { ...lacking, authority: 'refuses' } as const;
    expect(lacksIn(mca, advance)).toEqual([{ at: 'document', why: 'document-unsaid' }]);
    expect(lacksIn(mca, { ...advance, document: 'not-seen' })).toEqual([]);
  });
  it('s.6 no part, no start, no authority speaks of restraint or of others', () => {
    expect(JSON.stringify([parts, starts, authorities, conclusions])).not.toMatch(
      /restrain|hold|held|force|others/,
    );
  });
});

describe('the supported-decision pack follows CRPD article 12', () => {
  it('examines nobody: no limb is ever asked', () => {
    for (const start of starts) {
      for (const conclusion of conclusions) {
        const path = asked(crpd, { ...empty, start, conclusion, authority: 'supported' });
        for (const limb of limbs) expect(path).not.toContain(limb);
      }
    }
  });
  it('art. 12(3) and (4): supporters, will and preferences, and undue influence', () => {
    const path = asked(crpd, {
      ...empty,
      ...{ start: 'will-unclear', conclusion: 'will-interpreted', authority: 'interpretation' },
    });
    expect(path).toEqual(expect.arrayContaining(['supporters', 'will', 'pressure', 'consulted']));
  });
  it('knows no best interests', () => {
    expect(JSON.stringify(crpd)).not.toContain('best-interests');
  });
});

const answers: fc.Arbitrary<DecisionAnswers> = fc.record({
  start: fc.constantFrom('' as const, ...starts),
  conclusion: fc.constantFrom('' as const, ...conclusions),
  authority: fc.constantFrom('' as const, ...authorities),
  told: fc.subarray([...told], { minLength: 4 }),
  document: fc.constantFrom('' as const, 'seen' as const, 'not-seen' as const),
  limbs: fc.record(
    Object.fromEntries(
      limbs.map((limb) => [limb, fc.constantFrom('' as const, 'can' as const, 'cannot' as const)]),
    ) as Record<(typeof limbs)[number], fc.Arbitrary<'' | 'can' | 'cannot'>>,
  ),
  texts: fc.record(
    Object.fromEntries(
      parts.map((part) => [
        part,
        fc.oneof({ arbitrary: fc.constant('said'), weight: 30 }, fc.constantFrom('', ' ')),
      ]),
    ) as Record<Part, fc.Arbitrary<string>>,
  ),
});

describe.each(packs)('$pack', (pack) => {
  it('never puts a question before the one that is being answered', () => {
    fc.assert(
      fc.property(answers, answers, (given, other) => {
        for (const field of ['start', 'conclusion', 'authority'] as const) {
          const before = asked(pack, given);
          const at = before.indexOf(field);
          if (at === -1) continue;
          const after = asked(pack, { ...given, [field]: other[field] });
          expect(after.slice(0, at + 1)).toEqual(before.slice(0, at + 1));
        }
      }),
      { numRuns: 2000, seed: 6 },
    );
  });

  it('lets nothing stand that lacks what it demands on that path', () => {
    let complete = 0;
    fc.assert(
      fc.property(answers, (given) => {
        const kept = onlyAsked(pack, given);
        if (lacksIn(pack, kept).length > 0) return;
        complete += 1;
        // Counted anew from the pack's own lists, not by the code under test.
        const began = pack.starts.find(({ start }) => start === kept.start)!;
        const concluded = pack.conclusions.find(({ conclusion }) => conclusion === kept.conclusion);
        const allowed = began.conclusions.length === 0 ? began.authorities : concluded!.authorities;
        expect(allowed).toContain(kept.authority);
        for (const { part, when } of pack.questions) {
          const demanded =
            (when?.start?.includes(kept.start as never) ?? true) &&
            (when?.conclusion?.includes(kept.conclusion as never) ?? true) &&
            (when?.authority?.includes(kept.authority as never) ?? true);
          expect(kept.texts[part].trim() !== '', part).toBe(demanded);
        }
        expect(kept.told).toHaveLength(5);
      }),
      { numRuns: 30_000, seed: 20261128 },
    );
    expect(complete).toBeGreaterThan(30);
  });
});
