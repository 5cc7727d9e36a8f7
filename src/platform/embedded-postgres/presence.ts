import pg from 'pg';
import { codeOf } from '../set-up-error.js';

/**
 * One connection that every Rungwise server keeps open to its embedded database. It holds a shared advisory lock as
 * long as the server lives: so the last one to leave can tell that it is the last. When it breaks, the database is gone.
 */
export interface Presence {
  /**
   * Gives up the shared lock and asks for the exclusive one.
   * @returns true when no other server holds it and a Rungwise server started this database: then it may be stopped.
   * Until it has stopped, nobody else comes in.
   */
  isLast(): Promise<boolean>;
  close(): Promise<void>;
}

/** Marks a database server as started by Rungwise and not by hand (it is shown in `ps`, too). */
export const clusterName = 'rungwise';
/** Any number will do, as long as no other lock has it. */
const lock = 7_291_846;

/** Why a server did not take us in: it is on its way up or down (or not there), it refuses our password, or else. */
export function refusal(error: unknown): 'not-now' | 'password' | 'else' {
  const code = codeOf(error);
  if (['28P01', '28000', '3D000'].includes(code)) return 'password';
  if (['ECONNREFUSED', 'ECONNRESET', 'EPIPE', 'ETIMEDOUT', '57P01', '57P02', '57P03', '53300'].includes(code)) return 'not-now';
  return /timeout|terminated|closed/i.test(String(error)) ? 'not-now' : 'else';
}

/**
 * Connects and takes the shared lock.
 * @param onLost called once when the connection breaks without our closing it
 * @throws what `pg` throws; see `refusal`
 */
export async function present(url: string, onLost: () => void): Promise<Presence> {
  const client = new pg.Client({
    connectionString: url,
    application_name: 'rungwise presence',
    connectionTimeoutMillis: 5000,
    keepAlive: true,
  });
  let expected = true; // failures before we are in are reported by the promise, not by onLost
  const lost = (): void => {
    if (expected) return;
    expected = true;
    onLost();
  };
  client.on('error', lost);
  client.on('end', lost);
  try {
    await client.connect();
    await client.query('SELECT pg_advisory_lock_shared($1)', [lock]);
  } catch (error) {
    client.end().catch(() => undefined);
    throw error;
  }
  expected = false;
  return {
    async isLast() {
      expected = true;
      await client.query('SELECT pg_advisory_unlock_shared($1)', [lock]);
      const { rows } = await client.query<{ last: boolean }>(
        "SELECT pg_try_advisory_lock($1) AND current_setting('cluster_name') = $2 AS last",
        [lock, clusterName],
      );
      return rows[0]?.last === true;
    },
    async close() {
      expected = true;
      await client.end().catch(() => undefined);
    },
  };
}
