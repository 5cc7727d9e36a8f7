import type { Tally } from '../core/analysis/gathered.js';
import type { RecordedCertainty } from '../core/questions/schema.js';
import { inTransaction, type Db } from '../platform/db.js';

/**
 * Who answered what, counted where it lies: one statement reads each answer once, so that its cost grows as the record does, and what
 * comes back is a few lines a question however many people there are.
 */

/** A class, all classes of the club, everybody who studies here. */
export type Scope = 'class' | 'club' | 'all';

/** Whom it is about. `$2` is the class, or the tutor who asks; null for whoever sees all classes. */
const members = `SELECT person_id, bool_or($2::int IS NULL OR class_id IN (SELECT class_id FROM class_tutor WHERE person_id = $2)) AS own, true AS member
  FROM class_member GROUP BY person_id`;
const people: Readonly<Record<Scope, string>> = {
  class: 'SELECT person_id, true AS own, true AS member FROM class_member WHERE class_id = $2',
  club: members,
  all: `SELECT p.id AS person_id, coalesce(m.own, false) AS own, m.own IS NOT NULL AS member FROM person p LEFT JOIN (${members}) m ON m.person_id = p.id`,
};

/**
 * The revisions that count as the present question: since the first that asked the same. One that says nothing of that begins afresh;
 * `anew` where there were others before it.
 */
const asked = `SELECT q.id, q.kind, s.since, EXISTS (SELECT FROM question_revision o WHERE o.question_id = q.id AND o.revision < s.since) AS anew
  FROM question q JOIN question_revision r ON r.question_id = q.id AND r.revision = q.current_revision,
    LATERAL (SELECT coalesce((r.body->>'sameSince')::int, q.current_revision) AS since) s WHERE NOT q.retired`;

/** Answers with what was chosen, in the words of core/analysis/gathered.ts. @param given what an answer in parts says, or NULL */
const answers = (given: string, first: string, only: string): string => `
    SELECT a.person_id, a.question_id, a.revision, a.certainty, a."right", w.own, w.member, CASE
        WHEN k.kind IN ('single', 'place') THEN a.given
        WHEN k.kind = 'numeric' THEN CASE WHEN a."right" THEN '+right' WHEN a.given = '' THEN '' ELSE coalesce(a.tell_tale, '+other') END
        END AS choice, CASE WHEN k.kind IN ('several', 'order', 'pairs') THEN ${given} END AS given, ${first} AS first
    FROM who w JOIN answer a USING (person_id) JOIN asked k ON k.id = a.question_id AND ${only}`;

/**
 * Each answer, and with a first one the person's share right of the other questions at first sight. An answer carries its number among the
 * person's answers to the question, so that only where a question began afresh answers need be put in order.
 */
const held = (scope: Scope, given: string, only = ''): string => `
  WITH who AS (SELECT * FROM (${people[scope]}) whom ${only}), asked AS MATERIALIZED (${asked}), met AS MATERIALIZED (
    ${answers(given, 'a.reps_after = 1', 'NOT k.anew')}
    UNION ALL ${answers(given, 'row_number() OVER (PARTITION BY a.person_id, a.question_id ORDER BY a.reps_after) = 1', 'k.anew AND a.revision >= k.since')}
  ), summed AS (
    SELECT person_id, count(*) AS met, count(*) FILTER (WHERE "right") AS right_in_all FROM met WHERE first GROUP BY person_id
  ), held AS (
    SELECT m.*, CASE WHEN first AND s.met > $1::int THEN (s.right_in_all - "right"::int)::float8 / (s.met - 1) END AS rest
    FROM met m JOIN summed s USING (person_id)
  )`;

const counts = `question_id AS "questionId", first, revision, CASE WHEN first THEN choice END AS choice, CASE WHEN first THEN given END AS given,
    CASE WHEN first THEN certainty END AS certainty, "right", count(*)::int AS answers,
    count(*) FILTER (WHERE first AND NOT own)::int AS beyond, count(*) FILTER (WHERE first AND NOT member)::int AS outside,
    count(rest)::int AS people, avg(rest) AS mean, var_pop(rest) AS variance, min(rest) AS least, max(rest) AS most`;
const alike =
  'GROUP BY question_id, first, revision, CASE WHEN first THEN choice END, CASE WHEN first THEN given END, CASE WHEN first THEN certainty END, "right"';

const ofAll = (scope: Scope): string => `${held(scope, 'NULL')}
  SELECT ${counts}, 0 AS upper, 0 AS lower, 0 AS both FROM held ${alike}`;

/** Of one question, only those who answered it need be looked at. A group is 27 % of those who are held, half rounded up, ties included. */
const ofOne = (scope: Scope): string => `
  ${held(scope, 'a.given', 'WHERE EXISTS (SELECT FROM answer x WHERE x.person_id = whom.person_id AND x.question_id = $3)')}, placed AS (
    SELECT *, rank() OVER (PARTITION BY rest IS NULL ORDER BY rest DESC) AS from_above, rank() OVER (PARTITION BY rest IS NULL ORDER BY rest) AS from_below,
      greatest(1, (27 * count(*) OVER (PARTITION BY rest IS NULL) + 50) / 100) AS size
    FROM held WHERE question_id = $3
  )
  SELECT ${counts}, count(rest) FILTER (WHERE from_above <= size)::int AS upper, count(rest) FILTER (WHERE from_below <= size)::int AS lower,
    count(rest) FILTER (WHERE from_above <= size AND from_below <= size)::int AS both FROM placed ${alike}`;

export interface TallyRow extends Tally {
  questionId: number;
  /** An answer with parts as it was given; null for any other, and in a list. */
  given: string | null;
  /** First answers by people of none of the viewer's classes, and by people of no class at all. */
  beyond: number;
  outside: number;
}

export interface Whom {
  scope: Scope;
  classId: number;
  /** Whose classes count as the viewer's own; null for all. */
  tutorId: number | null;
}

/**
 * What was answered to questions that are asked now, by how people answered.
 * @param fewestOthers how many other questions somebody must have met to be held against them
 * @param questionId of one question: then answers in parts are told apart and the upper and lower groups counted
 */
export async function readTallies(db: Db, whom: Whom, fewestOthers: number, questionId: number | null): Promise<TallyRow[]> {
  const { scope, classId, tutorId } = whom;
  const ids = questionId === null ? [] : [questionId];
  const values = [fewestOthers, scope === 'class' ? classId : tutorId, ...ids];
  const text = questionId === null ? ofAll(scope) : ofOne(scope);
  // A club's answers are sorted in memory and not on disk, so that the cost does not leap where they no longer fit.
  const { rows } = await inTransaction(db, async (sql) => {
    await sql.query("SET LOCAL work_mem = '64MB'");
    return await sql.query<FlatTally>(text, values);
  });
  return rows.map(({ people: held, mean, variance, least, most, ...row }) => ({
    ...row,
    rest: held === 0 ? null : { people: held, mean: mean ?? 0, variance: variance ?? 0, least: least ?? 0, most: most ?? 0 },
  }));
}

interface FlatTally extends Omit<TallyRow, 'rest' | 'certainty'> {
  certainty: RecordedCertainty | null;
  people: number;
  mean: number | null;
  variance: number | null;
  least: number | null;
  most: number | null;
}
