import { PrismaPg } from '@prisma/adapter-pg';
import pg from 'pg';
import { PrismaClient } from './generated/prisma/client.js';
import { codeOf } from './set-up-error.js';

/**
 * The database: one pool of connections, used in two ways. `prisma` for ordinary reads and writes with types, `pool` for
 * statements whose cost matters or that Prisma cannot say.
 */
export interface Db {
  pool: pg.Pool;
  prisma: PrismaClient;
  /** Waits for running queries, then closes all connections. */
  close(): Promise<void>;
}

export interface DbOptions {
  url: string;
  /** Most connections at a time. Ten serve one Node process fully. */
  poolSize?: number;
  /** Gets a line when a connection breaks; that is no reason to stop. */
  log: (text: string) => void;
}

const { builtins } = pg.types;

/**
 * How `pool` reads values: 64-bit integers (counts, sums) as numbers, refused beyond 2^53 where a number is no longer
 * exact; dates without time as the text YYYY-MM-DD, since a Date would shift them by the time zone. `numeric` stays text:
 * cast to float8 in the statement where a number is wanted. Prisma has rules of its own and is not affected.
 */
const readers: pg.CustomTypesConfig = {
  getTypeParser: ((oid: number, format?: 'text' | 'binary') => {
    if (format !== 'binary' && oid === builtins.INT8) return exactInteger;
    if (format !== 'binary' && oid === builtins.DATE) return (text: string) => text;
    return pg.types.getTypeParser(oid, format as 'text');
  }) as typeof pg.types.getTypeParser,
};

function exactInteger(text: string): number {
  const value = Number(text);
  if (!Number.isSafeInteger(value)) throw new RangeError(`The database sent ${text}, which is too large to be an exact number.`);
  return value;
}

/**
 * Gives each of Prisma's statements a name, so that the server plans it once per connection. A list of varying length
 * makes a new text each time: when the names are used up, further texts go unnamed.
 */
function statementNames(most: number): (query: { sql: string }) => string {
  const names = new Map<string, string>();
  return ({ sql }) => {
    const known = names.get(sql);
    if (known !== undefined || names.size >= most) return known ?? '';
    const name = `prisma-${names.size}`;
    names.set(sql, name);
    return name;
  };
}

/**
 * Opens the database. No connection is made before the first query, and a lost one is replaced by the next query.
 * Times: 3 s to get a connection, 10 s for a statement, 5 s for a lock, 15 s idle inside a transaction.
 */
export function openDatabase({ url, poolSize = 10, log }: DbOptions): Db {
  const pool = new pg.Pool({
    connectionString: url,
    max: poolSize,
    min: 1, // one stays open, so that a restore can tell from the database that a server is there
    application_name: 'rungwise',
    connectionTimeoutMillis: 3000,
    statement_timeout: 10_000,
    lock_timeout: 5000,
    idle_in_transaction_session_timeout: 15_000,
    options: '-c TimeZone=UTC',
    types: readers,
  });
  pool.on('error', (error) => log(`A connection to the database broke: ${error.message}`));
  // The pool listens only to connections that lie idle; one that breaks in use would end the process.
  pool.on('connect', (client) => client.on('error', () => undefined));
  const prisma = new PrismaClient({ adapter: new PrismaPg(pool, { statementNameGenerator: statementNames(300) }) });
  let closed: Promise<void> | undefined;
  const close = async (): Promise<void> => {
    await prisma.$disconnect();
    await pool.end();
  };
  return { pool, prisma, close: () => (closed ??= close()) };
}

/**
 * Does the work in one transaction: all of it is kept, or, when the work throws, nothing. If the connection breaks while
 * the end is being written, the caller gets an error although the work may have been kept: work must bear a second try.
 */
export async function inTransaction<T>(db: Pick<Db, 'pool'>, work: (sql: pg.PoolClient) => Promise<T>): Promise<T> {
  const client = await db.pool.connect();
  let broken = false;
  try {
    await client.query('BEGIN');
    const result = await work(client);
    await client.query('COMMIT');
    return result;
  } catch (error) {
    await client.query('ROLLBACK').catch(() => (broken = true));
    throw error;
  } finally {
    client.release(broken);
  }
}

/** The error itself and what it wraps: `cause`, and what Prisma keeps of the driver's error under `meta`. */
function* layers(error: unknown): Generator<object> {
  const seen = new Set<unknown>();
  const queue = [error];
  while (queue.length > 0 && seen.size < 20) {
    const at = queue.shift();
    if (typeof at !== 'object' || at === null || seen.has(at)) continue;
    seen.add(at);
    yield at;
    const { cause, meta, errors } = at as { cause?: unknown; meta?: { driverAdapterError?: unknown }; errors?: unknown };
    queue.push(cause, meta?.driverAdapterError, ...(Array.isArray(errors) ? (errors as unknown[]) : []));
  }
}

function codes(layer: object): string[] {
  return [codeOf(layer), codeOf({ code: (layer as { originalCode?: unknown }).originalCode })];
}

const networkCodes = 'ECONNREFUSED ECONNRESET EPIPE ETIMEDOUT ENOTFOUND EAI_AGAIN EHOSTUNREACH ENETUNREACH ENETDOWN';
// 57P…: shut down, crashed, starting up, database dropped. 53300: no connections left. 08…: a connection that failed or
// broke. 25P03: the server closed a connection that idled inside a transaction.
const serverCodes = '57P01 57P02 57P03 57P04 57P05 53300 08000 08001 08003 08004 08006 08P01 25P03';
const prismaCodes = 'P1001 P1002 P1008 P1017 P2024';
const awayCodes = new Set([networkCodes, serverCodes, prismaCodes].join(' ').split(' '));
const awayKinds = new Set(['DatabaseNotReachable', 'ConnectionClosed', 'SocketTimeout', 'TooManyConnections']);
const awayTexts =
  /^(Connection terminated|timeout exceeded when trying to connect|timeout expired|Client has encountered a connection error|Client was closed|Cannot use a pool after)/;

/** True when the query failed because the database could not be reached or went away: the same query may work later. */
export function isDatabaseAway(error: unknown): boolean {
  for (const layer of layers(error)) {
    if (codes(layer).some((code) => awayCodes.has(code))) return true;
    if (awayKinds.has(String((layer as { kind?: unknown }).kind))) return true;
    if (awayTexts.test(String((layer as { message?: unknown }).message))) return true;
  }
  return false;
}

/** True when the disk of the database, or of this program, is full. Nothing of the failed statement was kept. */
export function isDiskFull(error: unknown): boolean {
  for (const layer of layers(error)) {
    if (codes(layer).some((code) => code === '53100' || code === 'ENOSPC')) return true;
  }
  return false;
}
