import { inTransaction, type Db } from '../platform/db.js';

/** Queries over everybody who studies here. */

export interface TopicStanding {
  topic: string;
  people: number;
  mean: number;
  lower: number;
  middle: number;
  upper: number;
}

/**
 * How all stand in each topic today, worked out once a day by whoever looks first: a pass over every memory, about a second for ten
 * thousand people. Of two who look at once one works and the other waits for it.
 */
export async function ensureTopicDay(db: Db, day: number, curve: { factor: number; decay: number }): Promise<void> {
  const { rows } = await db.pool.query<{ there: boolean }>('SELECT EXISTS (SELECT FROM topic_day WHERE day = $1) AS there', [day]);
  if (rows[0]?.there === true) return;
  await inTransaction(db, async (sql) => {
    // A line for each candidate and topic is held at once: with the usual 4 MB it goes to disk, and costs twice as much.
    await sql.query("SET LOCAL work_mem = '64MB'");
    await sql.query(standingOfAll, [day, curve.factor, curve.decay]);
  });
}

const standingOfAll = `WITH own AS (
       SELECT m.person_id, m.topic_id, avg(power(1 + $2::float8 * greatest(0, $1::int - m.last_day) / m.stability, $3::float8)) AS recall
       FROM memory m WHERE m.stability IS NOT NULL AND NOT EXISTS (SELECT FROM question q WHERE q.id = m.question_id AND q.retired)
       GROUP BY m.person_id, m.topic_id
     )
     INSERT INTO topic_day (day, topic_id, people, mean, lower, middle, upper)
     SELECT $1::int, topic_id, count(*), avg(recall), percentile_cont(0.25) WITHIN GROUP (ORDER BY recall),
       percentile_cont(0.5) WITHIN GROUP (ORDER BY recall), percentile_cont(0.75) WITHIN GROUP (ORDER BY recall)
     FROM own GROUP BY topic_id ON CONFLICT DO NOTHING`;

export async function topicDay(db: Db, day: number, pack: string): Promise<TopicStanding[]> {
  const { rows } = await db.pool.query<TopicStanding>(
    `SELECT t.code AS topic, d.people, d.mean, d.lower, d.middle, d.upper FROM topic_day d JOIN topic t ON t.id = d.topic_id JOIN pack p ON p.id = t.pack_id
     WHERE d.day = $1 AND p.slug = $2`,
    [day, pack],
  );
  return rows;
}

export interface ClassTopic {
  classId: number;
  topic: string;
  /** Members who were asked something of it. */
  people: number;
  /** Mean over members of their own means. */
  mean: number;
}

/** Classes by topics of one pack. */
export async function classTopics(
  db: Db,
  classIds: readonly number[],
  pack: string,
  day: number,
  curve: { factor: number; decay: number },
): Promise<ClassTopic[]> {
  const { rows } = await db.pool.query<ClassTopic>(
    `SELECT "classId", topic, count(*)::int AS people, avg(recall) AS mean FROM (
       SELECT cm.class_id AS "classId", t.code AS topic, m.person_id, avg(power(1 + $4::float8 * greatest(0, $3::int - m.last_day) / m.stability, $5::float8)) AS recall
       FROM class_member cm JOIN memory m ON m.person_id = cm.person_id AND m.stability IS NOT NULL
         JOIN question q ON q.id = m.question_id AND NOT q.retired JOIN topic t ON t.id = m.topic_id JOIN pack p ON p.id = t.pack_id
       WHERE cm.class_id = ANY ($1) AND p.slug = $2 GROUP BY cm.class_id, t.code, m.person_id) own
     GROUP BY "classId", topic`,
    [classIds, pack, day, curve.factor, curve.decay],
  );
  return rows;
}
