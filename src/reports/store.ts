import type { Db } from '../platform/db.js';

/** Queries of the reports: papers and signed skills of a class, or of one candidate. */

export interface PaperMark {
  personId: number;
  paperId: string;
  title: string;
  right: number;
  questions: number;
  passMark: number;
  passed: boolean;
  handedInAt: Date;
}

const marks = `s.person_id AS "personId", pa.id AS "paperId", pa.title, s."right", (pa.blueprint->>'questions')::int AS questions,
  (pa.blueprint->>'passMark')::int AS "passMark", s.passed, s.handed_in_at AS "handedInAt"
  FROM sitting s JOIN paper pa ON pa.id = s.paper_id`;

/** Papers set for a class that its members handed in, the earliest paper first. */
export async function marksOfClass(db: Db, classId: number): Promise<PaperMark[]> {
  const { rows } = await db.pool.query<PaperMark>(
    `SELECT ${marks} JOIN class_member m ON m.class_id = pa.class_id AND m.person_id = s.person_id
     WHERE pa.class_id = $1 AND s.handed_in_at IS NOT NULL ORDER BY pa.made_at, pa.id, s.person_id`,
    [classId],
  );
  return rows;
}

/** Every paper of a candidate, the latest first. */
export async function marksOf(db: Db, personId: number): Promise<PaperMark[]> {
  const { rows } = await db.pool.query<PaperMark>(
    `SELECT ${marks} WHERE s.person_id = $1 AND s.handed_in_at IS NOT NULL ORDER BY s.handed_in_at DESC, s.id`,
    [personId],
  );
  return rows;
}

export interface SignedSkill {
  personId: number;
  skill: string;
  title: string;
  /** 2026-11-26 */
  seenOn: string;
  signer: string;
}

/** Skills that stand signed, each once: by whoever signed first. */
export async function signedOf(db: Db, personIds: readonly number[]): Promise<SignedSkill[]> {
  const { rows } = await db.pool.query<SignedSkill>(
    `SELECT DISTINCT ON (person_id, skill) person_id AS "personId", skill, coalesce(body->>'title', skill) AS title,
       to_char(seen_on, 'YYYY-MM-DD') AS "seenOn", signer_name AS signer
     FROM sign_off WHERE person_id = ANY ($1) AND withdrawn_at IS NULL ORDER BY person_id, skill, signed_at`,
    [personIds],
  );
  return rows;
}

/** First answers of each member: how many, and how many of them right. */
export async function firstAnswers(db: Db, personIds: readonly number[]): Promise<{ personId: number; met: number; right: number }[]> {
  const { rows } = await db.pool.query<{ personId: number; met: number; right: number }>(
    `SELECT person_id AS "personId", count(*)::int AS met, count(*) FILTER (WHERE "right")::int AS "right" FROM answer
     WHERE person_id = ANY ($1) AND stability_before IS NULL AND rating IS NOT NULL GROUP BY person_id`,
    [personIds],
  );
  return rows;
}
