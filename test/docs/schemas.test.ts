import { readFileSync } from 'node:fs';
import Fastify from 'fastify';
import * as v from 'valibot';
import { afterAll, describe, expect, it } from 'vitest';
import { statisticModules } from '../../src/cli/schemas.ts';

// The server's own checker of JSON Schemas (Ajv) reads the published files, with nothing mended on the way.
const server = Fastify({
  ajv: {
    customOptions: {
      strict: false,
      coerceTypes: false,
      removeAdditional: false,
      useDefaults: false,
    },
  },
});
afterAll(() => server.close());
server.post('/check', (request) => {
  const { schema, value } = request.body as { schema: object; value: unknown };
  return { valid: request.validateInput(value, schema) };
});

/** A draft of 2020 in the words of draft 7, which is what the checker speaks: lists of fixed length. */
function older(schema: unknown): unknown {
  if (Array.isArray(schema)) return schema.map(older);
  if (typeof schema !== 'object' || schema === null) return schema;
  const { $schema: _, prefixItems, items, ...rest } = schema as Record<string, unknown>;
  const parts = Object.fromEntries(Object.entries(rest).map(([key, part]) => [key, older(part)]));
  if (prefixItems === undefined)
    return items === undefined ? parts : { ...parts, items: older(items) };
  return {
    ...parts,
    items: older(prefixItems),
    ...(items !== undefined && { additionalItems: older(items) }),
  };
}

async function fits(file: string, value: unknown): Promise<boolean> {
  const schema = older(JSON.parse(readFileSync(`docs/schemas/${file}`, 'utf8')));
  const { body } = await server.inject({
    method: 'POST',
    url: '/check',
    payload: { schema, value },
  });
  return (JSON.parse(body) as { valid: boolean }).valid;
}

const modules = await statisticModules();

describe.each(modules.map((m) => [m.definition.name, m.definition] as const))(
  'docs/schemas of tallyround %s',
  (name, definition) => {
    const outcome = definition.run(v.parse(definition.input, definition.example));
    const output = JSON.parse(
      JSON.stringify(outcome.ok ? v.parse(definition.output, outcome.value) : outcome),
    ) as Record<string, unknown>;

    it('describe the example and what comes of it', async () => {
      expect(await fits(`${name}.input.json`, definition.example)).toBe(true);
      expect(await fits(`${name}.output.json`, output)).toBe(true);
    });

    it('do not describe an answer with a part left out, or of another kind', async () => {
      for (const key of Object.keys(output)) {
        const { [key]: part, ...rest } = output;
        const other = typeof part === 'string' ? 7 : 'seven and a half';
        expect(await fits(`${name}.output.json`, { ...rest, [key]: other }), key).toBe(false);
      }
      expect(await fits(`${name}.output.json`, {})).toBe(false);
      expect(await fits(`${name}.input.json`, [])).toBe(false);
    });
  },
);
