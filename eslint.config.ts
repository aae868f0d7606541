import { defineConfig } from 'eslint/config';
import tseslint from 'typescript-eslint';

// The folders that must give the same bytes on every machine: no clock, no chance, no local zone.
const pure = [
  'src/statistics/**',
  'src/care/**',
  'src/ledger/*.ts',
  'src/ledger/findings/**',
  'src/procedures/**',
];

const impure = [
  [
    'NewExpression[callee.name="Date"][arguments.length=0]',
    'Pass the instant in: no `new Date()` here.',
  ],
  [
    'MemberExpression[object.name="Date"][property.name="now"]',
    'Pass the instant in: no `Date.now` here.',
  ],
  ['MemberExpression[object.name="Math"][property.name="random"]', 'Pass a seeded generator in.'],
  ['MemberExpression[object.name="Temporal"][property.name="Now"]', 'Pass the instant in.'],
  [
    'MemberExpression[property.name=/^(get|set)(FullYear|Month|Date|Day|Hours|Minutes|Seconds)$/]',
    'Local-zone getters differ by machine. Use Temporal with the zone named.',
  ],
] as const;

export default defineConfig(
  {
    ignores: [
      'dist/**',
      'node_modules/**',
      'coverage/**',
      '.cache/**',
      'data/**',
      'test/oracle/*.json',
      '.dependency-cruiser.cjs',
      'scripts/**/*.mjs',
      'bin/**',
    ],
  },
  ...tseslint.configs.strictTypeChecked,
  {
    languageOptions: {
      parserOptions: {
        project: [
          'tsconfig.pure.json',
          'tsconfig.node.json',
          'tsconfig.app.json',
          'tsconfig.test.json',
        ],
        tsconfigRootDir: import.meta.dirname,
      },
    },
    rules: {
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/switch-exhaustiveness-check': [
        'error',
        { considerDefaultExhaustiveForUnions: true },
      ],
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      '@typescript-eslint/no-confusing-void-expression': ['error', { ignoreArrowShorthand: true }],
      '@typescript-eslint/no-unused-vars': [
        'error',
        { ignoreRestSiblings: true, argsIgnorePattern: '^_', varsIgnorePattern: '^_' },
      ],
      'max-params': ['error', 4],
      eqeqeq: 'error',
      'no-console': 'error',
    },
  },
  {
    files: pure,
    ignores: ['**/*.test.ts'],
    rules: {
      'no-restricted-syntax': [
        'error',
        ...impure.map(([selector, message]) => ({ selector, message })),
      ],
    },
  },
  {
    // A page that opens when something is kept must not open over another one.
    files: ['src/app/screens/**', 'src/app/keeping/**'],
    ignores: ['src/app/keeping/use-go-on.ts'],
    rules: {
      'no-restricted-syntax': [
        'error',
        {
          selector:
            'VariableDeclarator[init.callee.name="useLocation"] > ArrayPattern[elements.length>1]',
          message: 'Go on with useGoOn: it leaves whoever has gone elsewhere meanwhile.',
        },
      ],
    },
  },
  {
    files: ['src/cli/**', 'src/server/main.ts', 'scripts/**', 'bench/**', 'test/**', 'demo/**'],
    rules: { 'no-console': 'off' },
  },
  {
    files: ['**/*.test.ts', '**/*.test.tsx', 'test/**'],
    rules: { '@typescript-eslint/no-non-null-assertion': 'off' },
  },
);
