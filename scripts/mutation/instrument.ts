import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { relative, resolve } from 'node:path';
import { createInstrumenter } from '@stryker-mutator/instrumenter';
import { build, type Plugin } from 'esbuild';

export interface Fault {
  readonly id: string;
  readonly file: string;
  readonly line: number;
  readonly kind: string;
  readonly replacement: string;
}

export const FOLDER = resolve('.cache/mutation/run');
export const BUNDLE = `${FOLDER}/bundle.mjs`;
const STATISTICS = resolve('src/statistics');

const quiet = {
  isDebugEnabled: () => false,
  debug: () => undefined,
  info: () => undefined,
  warn: console.warn,
  error: console.error,
};

/** The little of an injector that the instrumenter asks for. */
const injector = {
  provideValue: () => injector,
  injectClass: (Class: new (logger: unknown) => unknown) => new Class(quiet),
};

interface Instrumented {
  readonly files: readonly { readonly name: string; readonly content: string }[];
  readonly mutants: readonly {
    readonly id: string;
    readonly fileName: string;
    readonly mutatorName: string;
    /** Set for kinds that are not to be planted. */
    readonly status?: string;
    readonly replacement: string;
    readonly location: { readonly start: { readonly line: number } };
  }[];
}

/** All TypeScript under the statistics, by absolute path. */
const typeScript = (): string[] =>
  readdirSync(STATISTICS, { recursive: true, encoding: 'utf8' })
    .filter((f) => f.endsWith('.ts'))
    .map((f) => resolve(STATISTICS, f));

const isSource = (path: string): boolean =>
  !path.endsWith('.test.ts') && !path.endsWith('/testing.ts');

/** Plants every fault in the statistics, and gives their sources by absolute path. */
async function plant(): Promise<Instrumented> {
  const instrumenter = createInstrumenter(injector as never) as unknown as {
    instrument: (files: readonly object[], options: object) => Promise<Instrumented>;
  };
  const files = typeScript()
    .filter(isSource)
    .sort()
    .map((name) => ({ name, mutate: true, content: readFileSync(name, 'utf8') }));
  return instrumenter.instrument(files, {
    plugins: null,
    excludedMutations: ['StringLiteral'],
    ignorers: [],
    noHeader: false,
  });
}

/** Counts how often a fault is met in an array, and only while one is given: the instrumenter's own way is slow. */
const lazyCounting = (code: string): string =>
  code
    .replace(
      'function cover() {',
      'function cover() { var k = ns.counts; if (k) for (var j = 0; j < arguments.length; j++) k[arguments[j]]++; return;',
    )
    .replace(
      /stryCov_9fa48\(("\d+"(?:, "\d+")*)\)/g,
      (_, ids: string) => `stryCov_9fa48(${ids.replaceAll('"', '')})`,
    );

const sources = (code: ReadonlyMap<string, string>): Plugin => ({
  name: 'instrumented',
  setup(api) {
    api.onResolve({ filter: /^vitest$/ }, () => ({
      path: resolve('scripts/mutation/mini-vitest.ts'),
    }));
    api.onLoad({ filter: /\.ts$/ }, ({ path }) => {
      const contents = code.get(path);
      return contents === undefined
        ? undefined
        : { contents: lazyCounting(contents), loader: 'ts' };
    });
  },
});

/** Writes the bundle, with the tests whose path holds one of `testsIn`, and gives the list of faults. */
export async function instrument(testsIn: readonly string[] = ['']): Promise<readonly Fault[]> {
  const { files, mutants } = await plant();
  mkdirSync(FOLDER, { recursive: true });
  const tests = [
    ...typeScript()
      .filter((f) => f.endsWith('.test.ts'))
      .sort(),
    'src/cli/oracle/own-checks.test.ts',
  ].filter((test) => testsIn.some((part) => test.includes(part)));
  const entry = `${tests.map((t) => `import ${JSON.stringify(resolve(t))};`).join('\n')}\nexport { collected } from ${JSON.stringify(resolve('scripts/mutation/mini-vitest.ts'))};\n`;
  await build({
    stdin: { contents: entry, resolveDir: process.cwd(), loader: 'ts' },
    outfile: BUNDLE,
    bundle: true,
    platform: 'node',
    format: 'esm',
    packages: 'external',
    logLevel: 'error',
    plugins: [sources(new Map(files.map((f) => [f.name, f.content])))],
  });
  const faults = mutants
    .filter((m) => m.status !== 'Ignored')
    .map((m) => ({
      id: m.id,
      file: relative(STATISTICS, m.fileName),
      // Babel's lines begin at 1, the instrumenter's at 0.
      line: m.location.start.line + 1,
      kind: m.mutatorName,
      replacement: m.replacement.slice(0, 120),
    }));
  writeFileSync(`${FOLDER}/faults.json`, JSON.stringify(faults));
  return faults;
}
