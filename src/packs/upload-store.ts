import type { Db } from '../platform/db.js';

/** Queries about packs that were sent and wait, and about the packs there are. */

export interface UploadRow {
  id: string;
  fileName: string;
  report: unknown;
  pack: unknown;
  result: unknown;
  uploadedAt: Date;
  byName: string;
}

const columns = `u.id, u.file_name AS "fileName", u.report, u.pack, u.result, u.uploaded_at AS "uploadedAt", p.display_name AS "byName"`;

/** How many one person may have waiting: each may take megabytes. */
const mostWaiting = 10;

/** Keeps an upload, and takes away those that have waited since before `oldest`, and the person's own earliest beyond the limit. */
export async function addUpload(
  db: Db,
  upload: { id: string; personId: number; fileName: string; report: object; pack: object | null; now: Date; oldest: Date },
): Promise<void> {
  await db.pool.query('DELETE FROM pack_upload WHERE uploaded_at < $1', [upload.oldest]);
  await db.pool.query(
    'INSERT INTO pack_upload (id, person_id, file_name, report, pack, uploaded_at) VALUES ($1, $2, $3, $4, $5, $6) ON CONFLICT (id) DO NOTHING',
    [
      upload.id,
      upload.personId,
      upload.fileName,
      JSON.stringify(upload.report),
      upload.pack === null ? null : JSON.stringify(upload.pack),
      upload.now,
    ],
  );
  await db.pool.query(
    `DELETE FROM pack_upload WHERE person_id = $1 AND result IS NULL AND id NOT IN (
       SELECT id FROM pack_upload WHERE person_id = $1 AND result IS NULL ORDER BY uploaded_at DESC, id LIMIT $2)`,
    [upload.personId, mostWaiting],
  );
}

export async function findUpload(db: Db, id: string): Promise<UploadRow | null> {
  const { rows } = await db.pool.query<UploadRow>(
    `SELECT ${columns} FROM pack_upload u JOIN person p ON p.id = u.person_id WHERE u.id = $1`,
    [id],
  );
  return rows[0] ?? null;
}

export async function waitingUploads(db: Db, since: Date): Promise<Omit<UploadRow, 'report' | 'pack' | 'result'>[]> {
  const { rows } = await db.pool.query<UploadRow>(
    `SELECT u.id, u.file_name AS "fileName", u.uploaded_at AS "uploadedAt", p.display_name AS "byName"
     FROM pack_upload u JOIN person p ON p.id = u.person_id
     WHERE u.result IS NULL AND u.pack IS NOT NULL AND u.uploaded_at >= $1 ORDER BY u.uploaded_at DESC LIMIT 20`,
    [since],
  );
  return rows;
}

/** Takes away an upload that was not added. */
export async function dropUpload(db: Db, id: string): Promise<void> {
  await db.pool.query('DELETE FROM pack_upload WHERE id = $1 AND result IS NULL', [id]);
}

export async function setResult(db: Db, id: string, result: object): Promise<void> {
  await db.pool.query('UPDATE pack_upload SET result = $2 WHERE id = $1', [id, JSON.stringify(result)]);
}

export interface PackListRow {
  title: string;
  slug: string;
  version: string;
  licence: string;
  origin: 'folder' | 'added';
  loadedAt: Date;
  questions: number;
  families: number;
  retired: number;
}

export async function listPacks(db: Db): Promise<PackListRow[]> {
  const { rows } = await db.pool.query<PackListRow>(
    `SELECT p.title, p.slug, p.version, p.licence, p.origin, p.loaded_at AS "loadedAt",
       count(q.id) FILTER (WHERE q.kind <> 'numeric' AND NOT q.retired)::int AS questions,
       count(q.id) FILTER (WHERE q.kind = 'numeric' AND NOT q.retired)::int AS families,
       count(q.id) FILTER (WHERE q.retired)::int AS retired
     FROM pack p LEFT JOIN question q ON q.pack_id = p.id GROUP BY p.id ORDER BY p.title`,
  );
  return rows;
}
