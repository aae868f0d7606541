import { describe, expect, it } from 'vitest';
import { jsonFault } from './json-fault.ts';

describe('where a text is not JSON', () => {
  it.each([
    ['', 'line 1, column 1: it ends too early'],
    ['{', 'line 1, column 2: it ends too early'],
    ['{"a": [1, 2', 'line 1, column 12: it ends too early'],
    ['{"a":1,}', 'line 1, column 8: '],
    ['{\n  "a": 1\n  "b": 2\n}', 'line 3, column 3: '],
    ['{\n  "a": tru}', 'line 2, column 11: Unexpected token'],
    ['[1, 2] 3', 'line 1, column 8: Unexpected non-whitespace character after JSON'],
    ['[NaN]', 'line 1, column 2: Unexpected token'],
    ["{'a': 1}", 'line 1, column 2: '],
    ['{"a": "\t"}', 'line 1, column 8: Bad control character in string literal'],
    ['void', 'line 1, column 1: Unexpected token'],
  ])('%j', (text, fault) => {
    expect(jsonFault(text)).toContain(fault);
  });

  it('says nothing of JSON', () => {
    for (const text of ['1', 'null', ' {"a": [1, {"b": "}"}]}\n'])
      expect(jsonFault(text)).toBeUndefined();
  });

  it('finds the place in a long text at once', () => {
    const rows = Array.from({ length: 20_000 }, (_, i) => `  {"at": ${i}}`);
    rows[15_000] = '  {"at": nul}';
    const begun = performance.now();
    expect(jsonFault(`[\n${rows.join(',\n')}\n]`)).toContain('line 15002, column 13');
    expect(performance.now() - begun).toBeLessThan(2000);
  });
});
