import type pg from 'pg';
import type { BackupSequence } from './format.js';

/** What the database says of its tables, so that nothing here need know any of them. */

export interface CatalogueTable {
  name: string;
  columns: { name: string; type: string }[];
  /** Other tables that it refers to. */
  needs: string[];
}

export const quoted = (name: string): string => `"${name.replaceAll('"', '""')}"`;

/** How values are written as text, so that any server reads them as they were. */
export const plainText = `SET client_encoding = 'UTF8'; SET DateStyle = 'ISO'; SET IntervalStyle = 'postgres'; SET extra_float_digits = 3;
  SET bytea_output = 'hex'; SET TimeZone = 'UTC'`;

/** @param own the names that are ours; what others keep in the same database is none of our business */
export async function readTables(client: pg.ClientBase, own: readonly string[]): Promise<CatalogueTable[]> {
  const { rows } = await client.query<CatalogueTable>(
    `SELECT c.relname::text AS name,
       coalesce((SELECT json_agg(json_build_object('name', a.attname, 'type', format_type(a.atttypid, a.atttypmod)) ORDER BY a.attnum)
         FROM pg_attribute a WHERE a.attrelid = c.oid AND a.attnum > 0 AND NOT a.attisdropped AND a.attgenerated = ''), '[]') AS columns,
       ARRAY(SELECT DISTINCT other.relname::text FROM pg_constraint k JOIN pg_class other ON other.oid = k.confrelid
         WHERE k.conrelid = c.oid AND k.contype = 'f' AND k.confrelid <> c.oid) AS needs
     FROM pg_class c
     WHERE c.relnamespace = 'public'::regnamespace AND c.relkind IN ('r', 'p') AND NOT c.relispartition AND c.relname = ANY ($1)
     ORDER BY c.relname COLLATE "C"`,
    [own],
  );
  return inOrder(rows);
}

/** Each table after those it refers to, so that filling them in this order breaks no reference. */
export function inOrder<T extends { name: string; needs: readonly string[] }>(tables: readonly T[]): T[] {
  const waiting = new Map(tables.map((table) => [table.name, table]));
  const ready: T[] = [];
  while (waiting.size > 0) {
    const next = [...waiting.values()].find(({ needs }) => !needs.some((need) => waiting.has(need)));
    if (next === undefined) throw new Error(`These tables refer to each other in a circle: ${[...waiting.keys()].join(', ')}`);
    waiting.delete(next.name);
    ready.push(next);
  }
  return ready;
}

/** Where the counters of these tables stand. A counter that is read later than the rows is ahead of them, which does no harm. */
export async function readSequences(client: pg.ClientBase, tables: readonly string[]): Promise<BackupSequence[]> {
  const { rows } = await client.query<{ name: string }>(
    `SELECT s.relname::text AS name FROM pg_class s
     JOIN pg_depend d ON d.classid = 'pg_class'::regclass AND d.objid = s.oid AND d.deptype IN ('a', 'i')
     JOIN pg_class t ON t.oid = d.refobjid
     WHERE s.relkind = 'S' AND s.relnamespace = 'public'::regnamespace AND t.relnamespace = s.relnamespace AND t.relname = ANY ($1)
     ORDER BY s.relname COLLATE "C"`,
    [tables],
  );
  const found: BackupSequence[] = [];
  for (const { name } of rows) {
    const at = await client.query<{ value: string; called: boolean }>(
      `SELECT last_value::text AS value, is_called AS called FROM ${quoted(name)}`,
    );
    found.push({ name, ...(at.rows[0] as { value: string; called: boolean }) });
  }
  return found;
}

export async function hasTable(client: pg.ClientBase, name: string): Promise<boolean> {
  const { rows } = await client.query<{ found: boolean }>(
    `SELECT EXISTS (SELECT FROM pg_class WHERE relnamespace = 'public'::regnamespace AND relkind IN ('r', 'p') AND relname = $1) AS found`,
    [name],
  );
  return rows[0]?.found === true;
}

/** True when somebody's record is in it: then it is not put aside without being asked for. */
export async function holdsPeople(client: pg.ClientBase): Promise<boolean> {
  if (!(await hasTable(client, 'person'))) return false;
  const { rows } = await client.query<{ found: boolean }>('SELECT EXISTS (SELECT FROM person) AS found');
  return rows[0]?.found === true;
}
