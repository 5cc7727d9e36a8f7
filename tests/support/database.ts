import { randomBytes } from 'node:crypto';
import pg from 'pg';
import { inject } from 'vitest';

export interface TestDatabase {
  /** The program's role on a database of one's own. */
  url: string;
  /** The superuser on the same database. */
  adminUrl: string;
  /** Throws out whoever is still connected, and removes it. */
  drop(): Promise<void>;
}

async function asAdmin(statement: string): Promise<void> {
  const client = new pg.Client({ connectionString: inject('adminUrl') });
  await client.connect();
  try {
    await client.query(statement);
  } finally {
    await client.end();
  }
}

async function makeDatabase(from: string): Promise<TestDatabase> {
  const name = `test_${randomBytes(6).toString('hex')}`;
  await asAdmin(`CREATE DATABASE ${name} TEMPLATE ${from} OWNER rungwise`);
  return {
    url: inject('templateUrl').replace(/\/template$/, `/${name}`),
    adminUrl: inject('adminUrl').replace(/\/postgres$/, `/${name}`),
    drop: () => asAdmin(`DROP DATABASE ${name} WITH (FORCE)`),
  };
}

/** A new database with all migrations, for one test file. Call `drop` in afterAll. */
export const freshDatabase = (): Promise<TestDatabase> => makeDatabase('template');

/** A new database with nothing in it. */
export const emptyDatabase = (): Promise<TestDatabase> => makeDatabase('template0');
