// npm run prisma:sql -- <name>: writes the next migration, prisma/migrations/NNNN_<name>/migration.sql, with the SQL that leads
// from the migrations so far to prisma/schema.prisma. What Prisma cannot express is added to the file by hand, below.
import { chmod, mkdir, mkdtemp, readFile, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { projectFolder } from './processes.mjs';
import { setUp } from './set-up.mjs';
import { StepError, runScript } from './steps.mjs';

const migrations = join(projectFolder, 'prisma', 'migrations');

async function withDatabase(work) {
  const { startEmbeddedPostgres } = await import('../dist/src/platform/embedded-postgres/index.js');
  const folder = await mkdtemp(join(tmpdir(), 'rungwise-sql-'));
  await chmod(folder, 0o711);
  const database = await startEmbeddedPostgres({ dataFolder: join(folder, 'data'), log: console.log });
  try {
    return await work(database.adminUrl);
  } finally {
    await database.stop();
    await rm(folder, { recursive: true, force: true });
  }
}

await runScript(async () => {
  const name = process.argv[2] ?? '';
  if (!/^[a-z][a-z0-9_]*$/.test(name)) {
    throw new StepError('The migration needs a name in small letters, such as add_papers.', 'npm run prisma:sql -- add_papers');
  }
  await setUp({ dev: true });
  const { sqlTo } = await import('./schema-engine.mjs');
  await mkdir(migrations, { recursive: true });
  const schema = await readFile(join(projectFolder, 'prisma', 'schema.prisma'), 'utf8');
  const sql = await withDatabase((url) => sqlTo({ url, schema, migrations }));
  if (sql === '') return console.log('Nothing to do: the migrations lead to the schema already.');
  const last =
    (await readdir(migrations))
      .filter((entry) => /^\d{4}_/.test(entry))
      .sort()
      .at(-1) ?? '0000';
  const folder = join(migrations, `${String(Number(last.slice(0, 4)) + 1).padStart(4, '0')}_${name}`);
  await mkdir(folder);
  await writeFile(join(folder, 'migration.sql'), `${sql}\n`);
  console.log(`Written: ${join(folder, 'migration.sql')}`);
});
