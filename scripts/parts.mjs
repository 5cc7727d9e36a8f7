// npm run parts [-- <file>]: the list of everything the program is made of, with versions, licences and check sums (CycloneDX), as npm
// itself writes it from the lock file: every system's parts, whatever is installed here, and nothing that only tests need.
import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { projectFolder, run, tail } from './processes.mjs';
import { StepError, runScript, step } from './steps.mjs';

const args = ['sbom', '--sbom-format=cyclonedx', '--sbom-type=application', '--package-lock-only'];

const readJson = async (name) => JSON.parse(await readFile(join(projectFolder, name), 'utf8'));

/** npm's own --omit=dev leaves out whatever a test needs as well, zod and yaml among it; so npm is shown a project without tests. */
async function withoutTests(folder) {
  const { devDependencies: _tests, ...manifest } = await readJson('package.json');
  const { packages, ...lock } = await readJson('package-lock.json');
  const { '': root, ...others } = packages;
  const { devDependencies: _same, ...rest } = root;
  const running = Object.entries(others).filter(([, { dev }]) => !dev);
  await writeFile(join(folder, 'package.json'), JSON.stringify(manifest));
  await writeFile(join(folder, 'package-lock.json'), JSON.stringify({ ...lock, packages: { '': rest, ...Object.fromEntries(running) } }));
}

async function listed(folder) {
  const npm = process.env.npm_execpath;
  const here = [`--prefix=${folder}`, ...args];
  const { code, output } = npm?.endsWith('.js') ? await run(process.execPath, [npm, ...here]) : await run('npm', here);
  const begins = output.indexOf('{');
  if (code !== 0 || begins < 0)
    throw new StepError(
      `npm could not list the parts.\n        ${tail(output)}`,
      'Node 20.19 brings an npm that can; look at `npm --version`.',
    );
  return JSON.parse(output.slice(begins, output.lastIndexOf('}') + 1));
}

await runScript(async () => {
  const file = resolve(process.argv[2] ?? join(projectFolder, 'dist', 'parts.cdx.json'));
  const place = await mkdtemp(join(tmpdir(), 'rungwise-parts-'));
  try {
    await step('parts', async () => {
      // npm calls the whole by the name of its folder.
      const folder = join(place, 'rungwise');
      await mkdir(folder);
      await withoutTests(folder);
      const list = await listed(folder);
      await mkdir(dirname(file), { recursive: true });
      await writeFile(file, `${JSON.stringify(list, null, 2)}\n`);
      return `${list.components.length} in ${file}`;
    });
  } finally {
    await rm(place, { recursive: true, force: true });
  }
});
