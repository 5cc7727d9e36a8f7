import type { Memory } from '../core/memory.js';
import type { FirstSights } from '../core/outlook/chance.js';
import type { Db } from '../platform/db.js';

/** What many candidates know at once. */

export interface MemoryOf {
  memory: Memory;
  surelyWrong: boolean;
}

/** By candidate and question: those that were asked; every other question is unmet. */
export async function memoriesOf(db: Db, personIds: readonly number[]): Promise<Map<number, Map<number, MemoryOf>>> {
  // Rows as arrays: a class has some ten thousand of them, and objects took twice the time.
  const { rows } = await db.pool.query<[number, number, number, number, number, boolean]>({
    name: 'outlook-memories-of-many',
    rowMode: 'array',
    text: `SELECT person_id, question_id, stability, difficulty, last_day, surely_wrong FROM memory
           WHERE person_id = ANY ($1) AND stability IS NOT NULL`,
    values: [personIds],
  });
  const known = new Map<number, Map<number, MemoryOf>>(personIds.map((id) => [id, new Map()]));
  for (const [personId, questionId, stability, difficulty, lastDay, surelyWrong] of rows)
    known.get(personId)?.set(questionId, { memory: { stability, difficulty, lastDay }, surelyWrong });
  return known;
}

/** By candidate, and by topic of one pack: how many questions were met, and how many of them were right at first sight. */
export async function firstSightsOf(db: Db, personIds: readonly number[], pack: string): Promise<Map<number, FirstSights[]>> {
  const { rows } = await db.pool.query<FirstSights & { personId: number }>({
    name: 'outlook-first-sights-of-many',
    text: `SELECT a.person_id AS "personId", t.code AS topic, count(*)::int AS met, count(*) FILTER (WHERE a."right")::int AS right
           FROM answer a JOIN question q ON q.id = a.question_id JOIN topic t ON t.id = q.topic_id JOIN pack p ON p.id = q.pack_id
           WHERE a.person_id = ANY ($1) AND p.slug = $2 AND a.stability_before IS NULL AND a.rating IS NOT NULL GROUP BY a.person_id, t.code`,
    values: [personIds, pack],
  });
  const sights = new Map<number, FirstSights[]>(personIds.map((id) => [id, []]));
  for (const { personId, topic, met, right } of rows) sights.get(personId)?.push({ topic, met, right });
  return sights;
}
