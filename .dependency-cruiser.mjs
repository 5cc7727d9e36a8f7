/**
 * Who may import whom. Arrows point down: doors, features, platform, core, shared; and on the features' floor only to a
 * room on the left. tests/imports.test.ts runs these rules and proves that each of them can fail.
 */
const features = [
  'audit',
  'accounts',
  'questions',
  'packs',
  'answers',
  'calculators',
  'study',
  'plan',
  'outlook',
  'progress',
  'bank',
  'classes',
  'teaching',
  'papers',
  'analysis',
  'evenings',
  'skills',
  'reports',
  'personal-data',
  'upkeep',
];
const doors = ['web', 'jobs', 'cli', 'browser'];
const feature = `^src/(${features.join('|')})/`;
const builtin = { dependencyTypes: ['core'] };
const packages = { dependencyTypes: ['npm', 'npm-dev', 'npm-optional', 'npm-no-pkg', 'npm-unknown'] };

const rule = (name, comment, from, to) => ({ name, comment, severity: 'error', from, to });

/** One rule a feature: it may not use the rooms on its right. */
const order = features
  .slice(0, -1)
  .map((name, index) =>
    rule(
      `feature-order-${name}`,
      'On the features’ floor arrows point left.',
      { path: `^src/${name}/` },
      { path: `^src/(${features.slice(index + 1).join('|')})/` },
    ),
  );

export default {
  forbidden: [
    rule('no-circular', 'Two files that need each other are one file, or three.', {}, { circular: true }),
    rule('resolvable', 'What is imported must exist.', {}, { couldNotResolve: true }),

    rule(
      'shared-stands-alone',
      'shared/ runs in browser and server and imports nothing else.',
      { path: '^shared/' },
      { pathNot: '^shared/' },
    ),
    rule('core-looks-down', 'The core knows nothing above it.', { path: '^src/core/' }, { path: '^src/', pathNot: '^src/core/' }),
    rule('core-is-pure', 'No input or output in the core.', { path: '^(src/core|shared)/' }, builtin),
    rule(
      'core-packages',
      'The core uses zod, jsep in the reader of formulas, syllable in the lint, d3-scale in the charts, uqr for QR codes, and ts-fsrs in one file.',
      { path: '^src/core/' },
      { ...packages, pathNot: 'node_modules/(@types/)?(zod|jsep|syllable|ts-fsrs|d3-scale|uqr)/' },
    ),
    rule(
      'scheduler-in-one-file',
      'Only memory.ts sees the scheduling library.',
      { pathNot: '^src/core/memory\\.ts$' },
      { path: 'node_modules/ts-fsrs/' },
    ),
    rule(
      'platform-looks-down',
      'The platform knows no feature and no door.',
      { path: '^src/platform/' },
      { path: `^src/(${[...features, ...doors].join('|')})/` },
    ),
    rule('features-look-down', 'A feature knows no door.', { path: feature }, { path: `^src/(${doors.join('|')})/` }),
    rule(
      'doors-apart',
      'A door leads in, not to another door. Only the server’s process opens two: pages and jobs.',
      { path: `^src/(${doors.join('|')})/`, pathNot: '^src/web/main\\.ts$' },
      { path: `^src/(${doors.join('|')})/`, pathNot: '^src/$1/' },
    ),
    rule(
      'browser-uses-shared',
      'Browser modules use shared/ and themselves.',
      { path: '^src/browser/' },
      { pathNot: '^(src/browser|shared)/' },
    ),
    ...order,
    rule(
      'by-the-front-door',
      'A feature is entered by its index.ts.',
      { path: '^src/([^/]+)/' },
      { path: feature, pathNot: ['^src/$1/', '/index\\.ts$'] },
    ),

    rule(
      'fastify-at-the-door',
      'Fastify lives in routes and in src/web.',
      { pathNot: ['^src/web/', 'routes\\.ts$'] },
      { path: 'node_modules/(fastify|@fastify)/' },
    ),
    rule(
      'prisma-below',
      'The Prisma client is made in the platform; stores use what it made.',
      { pathNot: '^src/platform/' },
      { path: ['src/platform/generated', 'node_modules/@prisma/'] },
    ),
    rule(
      'pages-are-plain',
      'Pages turn results into data: no store, no platform, no service but its types.',
      { path: 'pages?\\.ts$' },
      { path: ['[/-]store\\.ts$', '^src/platform/', 'service\\.ts$'], dependencyTypesNot: ['type-only'] },
    ),
    rule(
      'routes-never-store',
      'Reads need the permission too, so routes go through the service.',
      { path: 'routes\\.ts$' },
      { path: '[/-]store\\.ts$' },
    ),
    rule(
      'service-below-pages',
      'A service knows no page and no route.',
      { path: `${feature}service\\.ts$` },
      { path: ['pages?\\.ts$', 'routes\\.ts$'] },
    ),
    rule(
      'stores-only-query',
      'A store knows the platform, plain data, and the names of columns that it shares with other stores of its feature.',
      { path: '[/-]store\\.ts$' },
      { path: feature, pathNot: '/columns\\.ts$', dependencyTypesNot: ['type-only'] },
    ),
    rule('no-tests-in-src', 'What ships does not need the tests.', { path: '^(src|shared)/' }, { path: '^tests/' }),
  ],
  options: {
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    doNotFollow: { path: 'node_modules' },
    exclude: { path: 'src/platform/generated/.*/(internal|models)' },
    enhancedResolveOptions: { conditionNames: ['import', 'node', 'default', 'types'], exportsFields: ['exports'] },
  },
};
