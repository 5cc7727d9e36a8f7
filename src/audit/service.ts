import type { Db } from '../platform/db.js';
import { listChanges, type ChangeRow } from './store.js';

export type ListedChange = ChangeRow;

export interface ChangesList {
  changes: ListedChange[];
  /** The number to ask with for the older ones; null when these are the last. */
  older: number | null;
}

const pageLength = 100;

/** A page of the list, the latest first. Whoever calls it has asked for the permission. */
export async function changesList(db: Db, before: number = 2_147_483_647): Promise<ChangesList> {
  const rows = await listChanges(db, before, pageLength + 1);
  const changes = rows.slice(0, pageLength);
  return { changes, older: rows.length > pageLength ? (changes.at(-1)?.id ?? null) : null };
}
