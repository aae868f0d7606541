import { readdirSync, readFileSync } from 'node:fs';
import ts from 'typescript';
import { expect, it } from 'vitest';

const app = `${import.meta.dirname}/..`;
const spoken = /^(aria-label|title|alt|placeholder|label|legend|caption|hint|problem|question)$/;

/** Text in an element that no catalogue has: JSX text, and words in the attributes that are read. */
function looseWords(path: string, code: string): readonly string[] {
  const found: string[] = [];
  const source = ts.createSourceFile(path, code, ts.ScriptTarget.Latest, true, ts.ScriptKind.TSX);
  const visit = (node: ts.Node): void => {
    if (ts.isJsxText(node) && /\p{L}/u.test(node.text)) found.push(node.text.trim());
    if (ts.isJsxAttribute(node) && spoken.test(node.name.getText())) {
      const value = node.initializer;
      const inside = value !== undefined && ts.isJsxExpression(value) ? value.expression : value;
      if (
        inside !== undefined &&
        (ts.isStringLiteral(inside) || ts.isTemplateExpression(inside)) &&
        /\p{L}/u.test(inside.getText())
      ) {
        found.push(inside.getText());
      }
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

const files = readdirSync(app, { recursive: true, encoding: 'utf8' }).filter(
  (path) => path.endsWith('.tsx') && !path.startsWith('gallery/'),
);

it('finds words that stand loose in an element', () => {
  expect(looseWords('x.tsx', 'const a = <p title={`${b} done`}>All sent</p>;')).toHaveLength(2);
});

it.each(files)('%s takes every word from the catalogue', (path) => {
  expect(looseWords(path, readFileSync(`${app}/${path}`, 'utf8'))).toEqual([]);
});
