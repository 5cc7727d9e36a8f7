import type { PoolClient } from 'pg';
import type { Blueprint, Region } from '../core/syllabus.js';
import type { Db } from '../platform/db.js';
import { headColumns, headTables } from './columns.js';
import type { ItemRow, PaperHead } from './rows.js';

/** Queries about papers and what they ask. */

export interface NewPaper {
  paperId: string;
  title: string;
  pack: string;
  blueprint: Blueprint;
  region: Region;
  seed: number;
  madeBy: number;
  madeAt: Date;
  classId: number | null;
  versions: readonly ItemRow[][];
  opensAt: Date | null;
  closesAt: Date | null;
}

/** A paper with all its versions. One whose id is there already stays as it is. */
export async function addPaper(sql: PoolClient, paper: NewPaper): Promise<void> {
  const items = paper.versions.flatMap((version, index) => version.map((item) => ({ version: index + 1, ...item })));
  await sql.query(
    `WITH made AS (
       INSERT INTO paper (id, pack_id, pack_version, title, blueprint, region, seed, made_by, made_at, class_id, versions, opens_at, closes_at)
       SELECT $1, p.id, p.version, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12 FROM pack p WHERE p.slug = $2
       ON CONFLICT (id) DO NOTHING RETURNING id
     )
     INSERT INTO paper_item (paper_id, version, position, question_id, revision, seed)
     SELECT made.id, i.version, i.position, i."questionId", i.revision, i.seed
     FROM made, jsonb_to_recordset($13) AS i(version int, position int, "questionId" int, revision int, seed int)`,
    [
      ...[paper.paperId, paper.pack, paper.title, JSON.stringify(paper.blueprint), paper.region, paper.seed, paper.madeBy, paper.madeAt],
      ...[paper.classId, paper.versions.length, paper.opensAt, paper.closesAt, JSON.stringify(items)],
    ],
  );
}

export async function findPaper(db: Db, paperId: string): Promise<PaperHead | null> {
  const { rows } = await db.pool.query<PaperHead>({
    name: 'paper-find',
    text: `SELECT ${headColumns} FROM ${headTables} WHERE pa.id = $1`,
    values: [paperId],
  });
  return rows[0] ?? null;
}

/** What one version asks, in its order. */
export async function itemsOf(sql: Pick<PoolClient, 'query'>, paperId: string, version: number): Promise<ItemRow[]> {
  const { rows } = await sql.query<ItemRow>({
    name: 'paper-items',
    text: `SELECT position, question_id AS "questionId", revision, seed FROM paper_item WHERE paper_id = $1 AND version = $2 ORDER BY position`,
    values: [paperId, version],
  });
  return rows;
}
