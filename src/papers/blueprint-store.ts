import type { Blueprint } from '../core/syllabus.js';
import type { Db } from '../platform/db.js';

/** Queries about make-ups of papers that tutors wrote. */

export interface OwnBlueprintRow {
  id: number;
  pack: string;
  packTitle: string;
  body: Omit<Blueprint, 'id'>;
  madeBy: string | null;
}

export async function listOwn(db: Db): Promise<OwnBlueprintRow[]> {
  const { rows } = await db.pool.query<OwnBlueprintRow>(
    `SELECT o.id, p.slug AS pack, p.title AS "packTitle", o.body, m.display_name AS "madeBy"
     FROM own_blueprint o JOIN pack p ON p.id = o.pack_id LEFT JOIN person m ON m.id = o.made_by WHERE NOT o.retired ORDER BY o.id`,
  );
  return rows;
}

export async function addOwn(db: Db, own: { pack: string; body: Omit<Blueprint, 'id'>; madeBy: number; madeAt: Date }): Promise<void> {
  await db.pool.query(
    'INSERT INTO own_blueprint (pack_id, body, made_by, made_at) SELECT id, $2, $3, $4 FROM pack WHERE slug = $1 AND NOT EXISTS (SELECT FROM own_blueprint o WHERE o.pack_id = pack.id AND o.body = $2 AND NOT o.retired)',
    [own.pack, JSON.stringify(own.body), own.madeBy, own.madeAt],
  );
}

/** Papers that were made from it keep their own copy. */
export async function retireOwn(db: Db, id: number): Promise<void> {
  await db.pool.query('UPDATE own_blueprint SET retired = true WHERE id = $1', [id]);
}
