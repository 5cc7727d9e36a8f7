import type { FirstSights } from '../core/outlook/chance.js';
import type { Db } from '../platform/db.js';

/** Queries for the outlook: how first sights went, and the outlooks of earlier days. */

/** By topic of one pack: how many questions were met, and how many of them were right at first sight. */
export async function firstSights(db: Db, personId: number, pack: string): Promise<FirstSights[]> {
  const { rows } = await db.pool.query<FirstSights>({
    name: 'outlook-first-sights',
    text: `SELECT t.code AS topic, count(*)::int AS met, count(*) FILTER (WHERE a."right")::int AS right
           FROM answer a JOIN question q ON q.id = a.question_id JOIN topic t ON t.id = q.topic_id JOIN pack p ON p.id = q.pack_id
           WHERE a.person_id = $1 AND p.slug = $2 AND a.stability_before IS NULL AND a.rating IS NOT NULL GROUP BY t.code`,
    values: [personId, pack],
  });
  return rows;
}

export interface OutlookRow {
  day: number;
  forDay: number;
  low: number;
  high: number;
}

/** Of a day the latest counts. */
export async function keepOutlook(db: Db, personId: number, row: OutlookRow & { paper: string; met: number }): Promise<void> {
  await db.pool.query({
    name: 'outlook-keep',
    text: `INSERT INTO outlook_day (person_id, day, for_day, paper, low, high, met) VALUES ($1, $2, $3, $4, $5, $6, $7)
           ON CONFLICT (person_id, day) DO UPDATE SET for_day = excluded.for_day, paper = excluded.paper, low = excluded.low, high = excluded.high, met = excluded.met`,
    values: [personId, row.day, row.forDay, row.paper, row.low, row.high, row.met],
  });
}

/** Those for one paper, the earliest first. */
export async function listOutlooks(db: Db, personId: number, paper: string): Promise<OutlookRow[]> {
  const { rows } = await db.pool.query<OutlookRow>(
    `SELECT day, for_day AS "forDay", low, high FROM outlook_day WHERE person_id = $1 AND paper = $2 ORDER BY day`,
    [personId, paper],
  );
  return rows;
}
