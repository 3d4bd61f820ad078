import type { IForbiddenRuleType } from 'dependency-cruiser';

/**
 * Which folder may import from which, and which packages: one way only, from the quantities at the
 * bottom to the screens at the top. Paths are those of the project, from its root.
 */
interface Layer {
  readonly folder: string;
  /** Regular expressions of what may be imported, beside the folder itself. */
  readonly mayImport: readonly string[];
}

const pkg = (name: string) => `(^|/)node_modules/${name}(/|$)`;

const LAYERS: readonly Layer[] = [
  { folder: 'src/quantities', mayImport: [] },
  { folder: 'src/contract', mayImport: ['^src/quantities/', pkg('valibot')] },
  { folder: 'src/balance', mayImport: ['^src/(quantities|contract)/'] },
  { folder: 'src/job', mayImport: ['^src/(quantities|contract|balance)/'] },
  { folder: 'src/measure', mayImport: ['^src/(quantities|contract|balance)/'] },
  {
    folder: 'workers',
    mayImport: ['^src/(quantities|contract|balance|measure)/', pkg('comlink'), pkg('mediabunny')],
  },
  {
    folder: 'src/session',
    mayImport: [
      '^src/(quantities|contract|balance|job)/',
      '^workers/',
      '^samples/',
      pkg('comlink'),
      pkg('fflate'),
      pkg('idb'),
      pkg('mediabunny'),
      pkg('valibot'),
      pkg('zustand'),
    ],
  },
  {
    folder: 'src/screens',
    mayImport: [
      '^src/(quantities|contract|balance|job|session)/',
      pkg('react'),
      pkg('react-dom'),
      pkg('d3-shape'),
      pkg('d3-scale'),
      pkg('wouter'),
      pkg('@types'),
    ],
  },
];

const layerRules: IForbiddenRuleType[] = LAYERS.map(({ folder, mayImport }) => ({
  name: `${folder.replace('src/', '')}-imports-downward`,
  severity: 'error',
  from: { path: `^${folder}/` },
  to: { pathNot: [`^${folder}/`, ...mayImport] },
}));

/**
 * The server and the build steps run under Node, beside the app: they see each other, how failures
 * are told, Node itself and their own packages; nothing of the app sees them.
 */
const NODE_SIDE = '^src/(server|build)/';
const nodeSideRules: IForbiddenRuleType[] = [
  {
    name: 'node-side-imports-nothing-of-the-app',
    severity: 'error',
    from: { path: NODE_SIDE },
    to: {
      pathNot: [
        NODE_SIDE,
        '^src/contract/outcome\\.ts$',
        ...['selfsigned', 'uqr', 'vite', 'vite-plugin-pwa', '@types'].map(pkg),
      ],
      dependencyTypesNot: ['core'],
    },
  },
  {
    name: 'app-imports-nothing-of-the-node-side',
    severity: 'error',
    from: { pathNot: NODE_SIDE },
    to: { path: NODE_SIDE },
  },
];

/** The only files that may load a thing of which there must be one. */
const WORKER_BRIDGE = '^src/session/measureWorker\\.ts$';
const OPENCV_LOADER = '^tests/outside/openCv\\.ts$';
const WORKER_ENTRIES = '^workers/[^/]+\\.worker\\.ts$';

const singleRules: IForbiddenRuleType[] = [
  {
    name: 'one-file-wraps-the-worker',
    severity: 'error',
    from: { pathNot: [WORKER_BRIDGE, WORKER_ENTRIES] },
    to: { path: pkg('comlink') },
  },
  {
    name: 'session-takes-only-types-from-workers',
    severity: 'error',
    from: { path: '^src/' },
    to: { path: '^workers/', dependencyTypesNot: ['type-only'] },
  },
  {
    // An outside reference for tests; the program itself does without.
    name: 'one-file-loads-opencv',
    severity: 'error',
    from: { pathNot: [OPENCV_LOADER] },
    to: { path: pkg('@opencvjs') },
  },
  { name: 'no-circles', severity: 'error', from: {}, to: { circular: true } },
  { name: 'nothing-missing', severity: 'error', from: {}, to: { couldNotResolve: true } },
  {
    name: 'no-tests-in-the-program',
    severity: 'error',
    from: { path: '^(src|workers)/' },
    to: { path: '^tests/' },
  },
];

export const IMPORT_RULES: readonly IForbiddenRuleType[] = [
  ...layerRules,
  ...nodeSideRules,
  ...singleRules,
];
