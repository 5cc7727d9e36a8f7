// Finds a Chromium for the browser tests: the one that is named, one that is installed, or one that a package carries.
import { access, constants, mkdir, mkdtemp, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { delimiter, dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { projectFolder } from './processes.mjs';

const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome'];
const places = [
  '/usr/bin/chromium',
  '/usr/lib/chromium/chromium',
  '/opt/google/chrome/chrome',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  String.raw`C:\Program Files\Google\Chrome\Application\chrome.exe`,
];

async function canRun(path) {
  return access(path, constants.X_OK).then(
    () => true,
    () => false,
  );
}

/** Playwright keeps browsers of its own, if somebody has installed one. */
async function fromPlaywright() {
  return import('playwright-core').then(
    ({ chromium }) => chromium.executablePath(),
    () => '',
  );
}

/** The folder of the package that carries a Chromium for Linux, with its version; undefined when it is not installed. */
async function carrier() {
  if (process.platform !== 'linux' || process.arch !== 'x64') return undefined;
  try {
    const entry = createRequire(import.meta.url).resolve('@sparticuz/chromium');
    const folder = entry.slice(0, entry.lastIndexOf('chromium/build')) + 'chromium';
    return { entry, version: JSON.parse(await readFile(join(folder, 'package.json'), 'utf8')).version };
  } catch {
    return undefined;
  }
}

/** Unpacks into the temporary folder that the package believes in, then moves that to its place, whole or not at all. */
async function unpack(entry, target) {
  await mkdir(dirname(target), { recursive: true });
  const half = await mkdtemp(`${target}-`);
  const before = { ...process.env };
  // So named, it unpacks the libraries as well that a bare system lacks.
  Object.assign(process.env, { TMPDIR: half, AWS_LAMBDA_JS_RUNTIME: 'nodejs20.x' });
  try {
    const { default: chromium } = await import(pathToFileURL(entry).href);
    await chromium.executablePath();
    const fonts = join(half, 'fonts', 'fonts.conf');
    await writeFile(fonts, (await readFile(fonts, 'utf8')).replaceAll('/tmp/fonts', join(target, 'fonts')));
    await rename(half, target);
  } finally {
    for (const name of Object.keys(process.env)) if (!(name in before)) delete process.env[name];
    Object.assign(process.env, before);
    await rm(half, { recursive: true, force: true });
  }
}

/** Readies the Chromium that a package carries, with its own fonts and libraries. */
async function fromPackage() {
  const found = await carrier();
  if (!found) return undefined;
  const folder = join(projectFolder, 'node_modules', '.cache', `chromium-${found.version}`);
  const program = join(folder, 'chromium');
  if (!(await canRun(program))) await unpack(found.entry, folder);
  process.env.FONTCONFIG_PATH = join(folder, 'fonts');
  process.env.LD_LIBRARY_PATH = [join(folder, 'al2023', 'lib'), process.env.LD_LIBRARY_PATH].filter(Boolean).join(':');
  return program;
}

/**
 * @returns {Promise<string | undefined>} the program's path, or undefined when there is none. For the one from a package
 * the environment of this process is told of its libraries and fonts.
 */
export async function findChromium() {
  const named = process.env.CHROMIUM_PATH;
  if (named) return (await canRun(named)) ? named : undefined;
  const onPath = (process.env.PATH ?? '').split(delimiter).flatMap((folder) => names.map((name) => join(folder, name)));
  for (const path of [...onPath, ...places, await fromPlaywright()]) {
    if (path && (await canRun(path))) return path;
  }
  return fromPackage();
}
