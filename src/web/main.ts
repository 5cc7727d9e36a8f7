import { randomBytes } from 'node:crypto';
import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { ensureInstallation, type AccountsService, type Installation } from '../accounts/index.js';
import { jobList } from '../jobs/list.js';
import { startJobs } from '../jobs/index.js';
import { packsService, readPackFolder, refusalWords } from '../packs/index.js';
import { migrateSafely } from '../platform/backup/index.js';
import { openDatabase, type Db } from '../platform/db.js';
import { openDatabasePlace, type OpenedPlace } from '../platform/database-place.js';
import { projectFolder } from '../platform/project-folder.js';
import { SetUpError } from '../platform/set-up-error.js';
import { readSettings, type Settings } from '../platform/settings.js';
import { step } from '../platform/steps.js';
import type { DemonstrationAccess } from '../../prisma/seed.js';
import { enrolAll } from '../study/index.js';
import { buildApp } from './app.js';
import { listenForMetrics } from './metrics.js';
import { serverPlace } from './server-place.js';

/** The server's process: database, migrations, packs, pages; and an orderly end. */

/** `npm run demo`. */
const demo = process.argv.includes('--demo');

const say = (text: string): void => console.error(text);

async function main(): Promise<void> {
  const asked = whenAskedToStop();
  const settings = await step('settings', async () => readSettings());
  const database = await step(
    'database',
    () => openServer(settings),
    (found) => found.note,
  );
  try {
    await serve(settings, database.url, asked);
  } finally {
    await database.stop();
  }
}

async function openServer(settings: Settings): Promise<OpenedPlace> {
  if (settings.databaseUrl !== undefined && demo)
    throw new SetUpError(
      'A demonstration fills a database of its own, and DATABASE_URL is set.',
      'Unset DATABASE_URL and start the demonstration again.',
    );
  return await openDatabasePlace(settings, dataFolderOf(settings), say);
}

/** A demonstration never mixes with a club's own people. */
const dataFolderOf = (settings: Settings): string => (demo ? `${settings.dataFolder}-demonstration` : settings.dataFolder);

async function serve(settings: Settings, url: string, asked: Promise<void>): Promise<void> {
  await step(
    'migrations',
    () => migrateSafely(url, settings, dataFolderOf(settings)),
    ({ applied, backup }) =>
      applied.length === 0 ? 'up to date' : `${applied.join(', ')}${backup === null ? '' : `, after a backup: ${backup}`}`,
  );
  const db = openDatabase({ url, log: say });
  try {
    await step(
      'packs',
      () => loadShippedPacks(db),
      (lines) => lines.join('; '),
    );
    const installation = await ensureInstallation(db, { cookieSecret: randomBytes(32), phraseSalt: randomBytes(16) });
    const demonstration = demo
      ? await step('demonstration', async () => (await import('../../prisma/seed.js')).fillDemonstration(db, installation, settings.clock))
      : null;
    await open(settings, db, { installation, demonstration, url }, asked);
  } finally {
    await db.close();
  }
}

interface Opened {
  installation: Installation;
  demonstration: DemonstrationAccess | null;
  url: string;
}

/** Takes requests and runs jobs until asked to stop; then finishes what is under way. */
async function open(settings: Settings, db: Db, { installation, demonstration, url }: Opened, asked: Promise<void>): Promise<void> {
  const { place, removed } = await serverPlace(settings, dataFolderOf(settings), url);
  const { server, accounts, work, figures } = await buildApp({
    db,
    clock: settings.clock,
    installation,
    origin: settings.origin ?? null,
    trustProxy: settings.trustProxy,
    // Whoever starts it by hand wants to read what to do; a service's log also tells who came in, by number.
    logger: { level: settings.logLevel === 'info' && process.stdout.isTTY ? 'warn' : settings.logLevel },
    place,
    removedList: removed,
    measured: settings.metrics !== undefined,
  });
  const watched = settings.metrics === undefined || figures === null ? null : await listenForMetrics(figures, settings.metrics);
  const address = await step('pages', () => server.listen({ port: settings.port, host: settings.host }));
  const shown = settings.origin ?? address;
  if (demonstration === null) await sayHowToBegin(accounts, shown);
  else sayWhoIsThere(demonstration);
  console.log(`ready ${address}/`);
  const list = jobList({ db, clock: settings.clock, place, ...work });
  const { timeZone } = Intl.DateTimeFormat().resolvedOptions();
  const jobs = startJobs({ db, clock: settings.clock, jobs: list, timeZone, server: place.server, log: server.log });
  await asked;
  await jobs.stop();
  await server.close();
  await watched?.close();
}

/** Every folder of question-packs. A pack with faults is left out, said plainly, and what was loaded before stays. */
async function loadShippedPacks(db: Db): Promise<string[]> {
  const home = join(projectFolder, 'question-packs');
  const { load } = packsService({ db, enrolAll });
  const lines: string[] = [];
  for (const entry of (await readdir(home, { withFileTypes: true })).filter((found) => found.isDirectory())) {
    const { pack, findings } = await readPackFolder(join(home, entry.name));
    const errors = findings.filter((finding) => finding.level === 'error');
    if (pack === null) {
      say(`The pack ${entry.name} has ${errors.length} errors and was not loaded: npx rungwise check question-packs/${entry.name}`);
      continue;
    }
    const result = await load(pack);
    if (result.state === 'refused')
      say(`The pack ${entry.name} was not loaded. ${result.refused.map(({ code, why }) => `${code}: ${refusalWords[why]}`).join('; ')}.`);
    else lines.push(`${pack.head.title} ${result.version}${result.state === 'unchanged' ? '' : `, ${result.questions} questions loaded`}`);
  }
  if (lines.length === 0 && (await db.prisma.pack.count()) === 0)
    throw new SetUpError('No pack could be loaded.', 'Mend what npx rungwise check says, and start again.');
  return lines;
}

async function sayHowToBegin(accounts: AccountsService, address: string): Promise<void> {
  const token = await accounts.setUpToken();
  if (token !== null) console.log(`        No administrator yet. Open this once, within 24 hours:\n        ${address}/set-up/${token}`);
}

function sayWhoIsThere({ tutor, candidate }: DemonstrationAccess): void {
  console.log(`        A demonstration: everybody in it is invented, and it has a database of its own.`);
  console.log(`        Tutor      ${tutor.name}, password: ${tutor.password}`);
  console.log(`        Candidate  ${candidate.name}, return phrase: ${candidate.phrase}`);
}

/** Listens for good: Ctrl-C reaches the server twice, from the terminal and from npm, and the second must not kill it. */
function whenAskedToStop(): Promise<void> {
  return new Promise((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.on(signal, () => resolve());
  });
}

main().then(
  () => process.exit(0),
  (error: unknown) => {
    if (!(error instanceof SetUpError)) console.error(error);
    process.exit(1);
  },
);
