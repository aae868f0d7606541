import type { Words } from '../words/en.ts';

/**
 * A language nobody speaks: every message in brackets and a third longer. What shows without brackets
 * on a gallery page is not from the catalogue; what breaks is too narrow for other languages.
 */
export function pseudo(words: Words): Words {
  return { ...(mark(words) as Words), language: words.language, dates: words.dates };
}

function mark(part: unknown): unknown {
  if (typeof part === 'string') return `[${part}${' ~~~~'.repeat(Math.ceil(part.length / 15))}]`;
  if (typeof part === 'function') {
    const say = part as (...args: readonly unknown[]) => unknown;
    return (...args: readonly unknown[]) => mark(say(...args));
  }
  if (typeof part !== 'object' || part === null) return part;
  return Object.fromEntries(Object.entries(part).map(([key, value]) => [key, mark(value)]));
}
