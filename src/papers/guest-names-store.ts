import type { PoolClient } from 'pg';

/** Names that stand on printed sheets of people without an account. The sheet with its letters can stay when the name goes. */

type Sql = Pick<PoolClient, 'query'>;

/** A name that was taken off, told apart by a number within its paper. */
const removed = '^name removed [0-9]+$';

export interface GuestName {
  sittingId: string;
  name: string;
}

/** Names on sheets of these papers' classes that are not taken off yet. */
export async function guestNamesIn(sql: Sql, classIds: readonly number[]): Promise<GuestName[]> {
  const { rows } = await sql.query<GuestName>(
    `SELECT s.id AS "sittingId", s.guest_name AS name FROM sitting s JOIN paper pa ON pa.id = s.paper_id
     WHERE pa.class_id = ANY ($1) AND s.guest_name IS NOT NULL AND s.guest_name !~ $2`,
    [classIds, removed],
  );
  return rows;
}

/** Sheets with a name that were handed in before a moment. */
export async function oldGuestSheets(sql: Sql, before: Date): Promise<string[]> {
  const { rows } = await sql.query<{ id: string }>(
    'SELECT id FROM sitting WHERE guest_name IS NOT NULL AND guest_name !~ $2 AND handed_in_at < $1',
    [before, removed],
  );
  return rows.map(({ id }) => id);
}

/**
 * Takes the names off these sheets: `name removed 1`, `name removed 2` and so on within each paper. A sheet of somebody with an account,
 * and one whose name is off already, stays as it is. @returns how many
 */
export async function takeNamesOff(sql: Sql, sittingIds: readonly string[]): Promise<number> {
  const { rowCount } = await sql.query(
    `WITH named AS (
       SELECT s.id, row_number() OVER (PARTITION BY s.paper_id ORDER BY s.id) + coalesce((
         SELECT max(substring(o.guest_name FROM '[0-9]{1,6}$')::int) FROM sitting o WHERE o.paper_id = s.paper_id AND o.guest_name ~ $2), 0) AS number
       FROM sitting s WHERE s.id = ANY ($1) AND s.guest_name IS NOT NULL AND s.guest_name !~ $2)
     UPDATE sitting s SET guest_name = 'name removed ' || named.number FROM named WHERE named.id = s.id`,
    [sittingIds, removed],
  );
  return rowCount ?? 0;
}
