// Prisma's schema engine in its WebAssembly form: it writes the SQL that leads from the migrations to the schema.
// Development only. It needs a PostgreSQL server, on which it makes and drops a database of its own.
import { randomUUID } from 'node:crypto';
import { readFile, readdir } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { PrismaPg } from '@prisma/adapter-pg';
import { bindMigrationAwareSqlAdapterFactory, ColumnTypeEnum } from '@prisma/driver-adapter-utils';
import * as engineModule from '@prisma/schema-engine-wasm/schema_engine_bg';
import pg from 'pg';

const charOid = 18;

/** The engine's module has one state, so it is loaded once. */
let loaded;

async function loadEngine() {
  // Where the engine leaves its last words when it breaks down.
  globalThis.PRISMA_WASM_PANIC_REGISTRY = { set_message: (message) => console.error(message) };
  const file = createRequire(import.meta.url)
    .resolve('@prisma/schema-engine-wasm/schema_engine_bg')
    .replace(/\.js$/, '.wasm');
  const { instance } = await WebAssembly.instantiate(await readFile(file), { './schema_engine_bg.js': engineModule });
  engineModule.__wbg_set_wasm(instance.exports);
  instance.exports.__wbindgen_start();
  return engineModule.SchemaEngine;
}

/**
 * Mends two things in Prisma's adapter that the engine needs. Catalogue columns of type "char" are unknown to it: they
 * are read as text and declared as characters. And a script is cut at every semicolon and sent through a pool: it goes
 * as one simple query instead, so that a comment or a function body may hold a semicolon.
 */
function mend(adapter) {
  const pool = adapter.underlyingDriver();
  const queryRaw = adapter.queryRaw.bind(adapter);
  adapter.executeScript = async (script) => void (await pool.query(script));
  adapter.queryRaw = async (query) => {
    const sql = query.sql.trim().replace(/;$/, '');
    const { fields } = await pool.query({ text: `SELECT * FROM (${sql}\n) AS q LIMIT 0`, values: query.args });
    if (!fields.some((field) => field.dataTypeID === charOid)) return queryRaw(query);
    const columns = fields.map(({ name, dataTypeID }) => `"${name}"${dataTypeID === charOid ? '::text' : ''}`);
    const result = await queryRaw({ ...query, sql: `SELECT ${columns.join(', ')} FROM (${sql}\n) AS q` });
    const columnTypes = result.columnTypes.map((type, index) => (fields[index].dataTypeID === charOid ? ColumnTypeEnum.Character : type));
    return { ...result, columnTypes };
  };
  return adapter;
}

/** The engine's shadow database: made when asked for, dropped when let go. Prisma's own forgets to close before it drops. */
async function shadow(url) {
  const name = `shadow_${randomUUID().replaceAll('-', '')}`;
  const admin = new pg.Client({ connectionString: url });
  await admin.connect();
  await admin.query(`CREATE DATABASE ${name} TEMPLATE template0`);
  const own = new URL(url);
  own.pathname = `/${name}`;
  const adapter = mend(await new PrismaPg({ connectionString: own.href }).connect());
  const dispose = adapter.dispose.bind(adapter);
  adapter.dispose = async () => {
    await dispose();
    await admin.query(`DROP DATABASE IF EXISTS ${name} WITH (FORCE)`);
    await admin.end();
  };
  return adapter;
}

async function readMigrationList(folder) {
  const names = (await readdir(folder, { withFileTypes: true })).filter((entry) => entry.isDirectory()).map((entry) => entry.name);
  const migrationDirectories = await Promise.all(
    names.sort().map(async (path) => {
      const value = await readFile(join(folder, path, 'migration.sql'), 'utf8');
      return { path, migrationFile: { path: 'migration.sql', content: { tag: 'ok', value } } };
    }),
  );
  const lockfile = { path: 'migration_lock.toml', content: 'provider = "postgresql"' };
  return { baseDir: folder, lockfile, shadowDbInitScript: '', migrationDirectories };
}

/**
 * Asks the engine for the SQL that leads from a starting point to a schema.
 * @param {{ url: string, schema: string, migrations?: string }} input url: a server where the user may make databases;
 *   schema: the text of schema.prisma; migrations: the folder to start from (absent: an empty database)
 * @returns {Promise<string>} '' when there is nothing to do
 */
export async function sqlTo({ url, schema, migrations }) {
  const SchemaEngine = await (loaded ??= loadEngine());
  const base = new PrismaPg({ connectionString: url });
  const opened = [];
  const connect = async () => {
    const adapter = mend(await base.connect());
    opened.push(adapter);
    return adapter;
  };
  const factory = { provider: base.provider, adapterName: base.adapterName, connect, connectToShadowDb: () => shadow(url) };
  const engine = await SchemaEngine.new({ datamodels: undefined }, () => undefined, bindMigrationAwareSqlAdapterFactory(factory));
  try {
    const result = await engine.diff({
      from: migrations ? { tag: 'migrations', ...(await readMigrationList(migrations)) } : { tag: 'empty' },
      to: { tag: 'schemaDatamodel', files: [{ path: 'schema.prisma', content: schema }] },
      script: true,
      exitCode: null,
      shadowDatabaseUrl: null,
      filters: { externalTables: [], externalEnums: [] },
    });
    const sql = (result.stdout ?? '').trim();
    return sql === '-- This is an empty migration.' ? '' : sql;
  } finally {
    engine.free();
    for (const adapter of opened) await adapter.dispose();
  }
}
