// The house rules of README and docs/decisions/0001: who may import whom.
const only = (from, allowed, comment) => ({
  name: `${from}-imports`,
  comment,
  severity: 'error',
  from: { path: `^src/${from}/`, pathNot: '\\.test\\.tsx?$' },
  to: { path: '^src/', pathNot: [`^src/${from}/`, ...allowed.map((a) => `^src/${a}`)] },
});

module.exports = {
  forbidden: [
    { name: 'no-circular', severity: 'error', from: {}, to: { circular: true } },
    only('statistics', [], 'Statistics knows nothing of care.'),
    only('care', ['statistics/'], 'Care is pure: it knows no ledger, no screen, no wire.'),
    only('ledger', [], 'Facts are opaque to the ledger.'),
    only(
      'procedures',
      ['care/', 'statistics/', 'ledger/'],
      'Procedures join care to the ledger port.',
    ),
    only('exchange', ['care/', 'statistics/'], 'Formats in and out; no storage.'),
    only(
      'server',
      ['procedures/', 'care/', 'exchange/', 'ledger/', 'statistics/'],
      'Never app or cli.',
    ),
    only(
      'app',
      ['procedures/', 'care/', 'exchange/', 'ledger/', 'statistics/'],
      'Never server or cli.',
    ),
    only(
      'cli',
      ['procedures/', 'care/', 'exchange/', 'ledger/', 'statistics/', 'server/operations/'],
      'Never app; of the server only what is done without it.',
    ),
    {
      name: 'stores-only-at-main',
      comment: 'Only a main.ts (or a test, bench or demo) picks a store.',
      severity: 'error',
      from: { path: '^src/', pathNot: ['^src/ledger/stores/', '/main\\.tsx?$', '\\.test\\.tsx?$'] },
      to: { path: '^src/ledger/stores/' },
    },
    {
      name: 'pure-has-no-platform',
      severity: 'error',
      from: {
        path: '^src/(statistics|care|procedures)/|^src/ledger/(findings/)?[^/]+\\.ts$',
        pathNot: '\\.test\\.ts$',
      },
      to: { dependencyTypes: ['core'] },
    },
    // `?url` is the bundler's: it names a file that is served, not a module.
    {
      name: 'no-unresolved',
      severity: 'error',
      from: {},
      to: { couldNotResolve: true, pathNot: '\\?url$' },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'require', 'node', 'default', 'types'],
    },
  },
};
