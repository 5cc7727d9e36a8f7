/** What may be wrong with the packages a project names: for the test, and for its proof on made-up ones. */

export interface Manifest {
  dependencies: Record<string, string>;
  optionalDependencies: Record<string, string>;
  devDependencies: Record<string, string>;
  overrides: Record<string, string>;
  allowScripts: Record<string, boolean>;
}

interface LockedPackage {
  version?: string;
  resolved?: string;
  integrity?: string;
  license?: string;
  dev?: boolean;
  hasInstallScript?: boolean;
}

export interface Lock {
  lockfileVersion: number;
  packages: Record<string, LockedPackage>;
}

/** Each part of the page: name of a package to the licence it is said to have. */
export interface Told {
  runs: Map<string, string>;
  tests: Map<string, string>;
}

const forRunning = 'MIT,ISC,0BSD,BSD-2-Clause,BSD-3-Clause,Apache-2.0,BlueOak-1.0.0,Unlicense,PostgreSQL,CC0-1.0,Python-2.0'.split(',');
const forTests = [...forRunning, 'MPL-2.0', 'Zlib'];
/** By package: what it says of itself, undefined for nothing. The page has the reasons. */
const exceptions = new Map([
  ['elkjs', 'EPL-2.0'],
  ['seq-queue', undefined],
]);

/** `(A OR B)`: one of them will do; `A AND B`: all must. */
export function isAllowed(licence: string, allowed: readonly string[]): boolean {
  const plain = licence.replace(/^\((.*)\)$/, '$1');
  if (/\sor\s/i.test(plain)) return plain.split(/\sor\s/i).some((one) => isAllowed(one, allowed));
  return plain.split(/\sand\s/i).every((one) => allowed.includes(one.trim()));
}

/** Reads the tables of the page. */
export function toldOn(page: string): Told {
  const [, runs = '', tests = ''] = page.split(/^## What .*$/m);
  const read = (part: string) =>
    new Map([...part.matchAll(/^\| `([^`]+)`\s*\| ([^|]+?)\s*\| ([^|]+?)\s*\|/gm)].map((found) => [found[1] ?? '', found[2] ?? '']));
  return { runs: read(runs), tests: read(tests) };
}

const nameOf = (path: string): string => path.slice(path.lastIndexOf('node_modules/') + 'node_modules/'.length);

function ofManifest({ packages }: Lock, named: Record<string, string>, told: Map<string, string>, where: string): string[] {
  const missing = Object.keys(named).filter((name) => !told.has(name));
  const surplus = [...told.keys()].filter((name) => !(name in named));
  const loose = Object.entries(named).filter(([, version]) => !/^\d+\.\d+\.\d+(-[\w.-]+)?$/.test(version));
  const other = [...told].filter(([name, licence]) => name in named && packages[`node_modules/${name}`]?.license !== licence);
  return [
    ...missing.map((name) => `${name} is not on the page (${where})`),
    ...surplus.map((name) => `${name} is on the page (${where}) and not in package.json`),
    ...loose.map(([name, version]) => `${name} ${version} is no exact version`),
    ...other.map(([name, licence]) => `${name} is ${packages[`node_modules/${name}`]?.license}, not ${licence}`),
  ];
}

function ofPackage(path: string, found: LockedPackage): string[] {
  const name = nameOf(path);
  const isException = exceptions.has(name) && exceptions.get(name) === found.license;
  return [
    ...(found.integrity?.startsWith('sha512-') ? [] : [`${name} has no check sum`]),
    ...(found.resolved === undefined ? [] : [`${name} says where it came from`]),
    ...(isException || isAllowed(found.license ?? 'nothing', found.dev ? forTests : forRunning)
      ? []
      : [`${name} has the licence ${found.license}`]),
  ];
}

/** @returns in words, everything that is not as the page says it is */
export function faultsOf(manifest: Manifest, lock: Lock, told: Told): string[] {
  const packages = Object.entries(lock.packages).filter(([path]) => path !== '');
  const scripts = new Set(packages.filter(([, found]) => found.hasInstallScript).map(([path]) => nameOf(path)));
  const named = new Map(Object.entries(manifest.allowScripts));
  return [
    ...(lock.lockfileVersion === 3 ? [] : ['the lock file is not of version 3']),
    ...ofManifest(lock, { ...manifest.dependencies, ...manifest.optionalDependencies }, told.runs, 'runs'),
    ...ofManifest(lock, manifest.devDependencies, told.tests, 'tests'),
    ...Object.entries(manifest.overrides)
      .filter(([name, version]) => lock.packages[`node_modules/${name}`]?.version !== version)
      .map(([name]) => `${name} is overridden, and another version is there`),
    ...packages.flatMap(([path, found]) => ofPackage(path, found)),
    ...[...scripts].filter((name) => named.get(name) !== false).map((name) => `${name} would run a script when it is installed`),
    ...[...named.keys()].filter((name) => !scripts.has(name)).map((name) => `${name} has no script that could be forbidden`),
  ];
}
