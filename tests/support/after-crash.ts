import { startEmbeddedPostgres } from '../../src/platform/embedded-postgres/index.js';
import { openDatabase, type Db } from '../../src/platform/db.js';
import { replayAll } from '../../src/study/index.js';

/** What the database holds after everything that was killed: read by statements of its own, and by the replay of the record of answers. */

export interface Kept {
  /** Every answer of a round, with what was given. */
  answers: { token: string; given: string; times: number }[];
  /** Memories whose count is not the count of their answers. */
  miscounted: unknown[];
  replay: { answers: number; differences: unknown[] };
  sittings: KeptSitting[];
  /** By id: how many questions, revisions of them, and topics. */
  packs: { slug: string; questions: number; revisions: number; topics: number }[];
  /** Rows that point at nothing. */
  loose: unknown[];
}

interface KeptSitting {
  id: string;
  handedIn: boolean;
  right: number | null;
  sheet: Record<string, string>;
  /** Of the sheet: marked right, lines with an answer in the record, and answers recorded for this candidate's papers in all. */
  marked: number;
  recorded: number;
}

const rowsOf = async <T extends object>(db: Db, text: string): Promise<T[]> => (await db.pool.query(text)).rows as T[];

const statements = {
  answers: `SELECT token, min(given) AS given, count(*)::int AS times FROM answer WHERE certainty <> 'unsaid' GROUP BY token`,
  miscounted: `SELECT m.person_id, m.question_id, m.reps, count(a.token)::int AS answers FROM memory m
    LEFT JOIN answer a ON a.person_id = m.person_id AND a.question_id = m.question_id
    GROUP BY m.person_id, m.question_id, m.reps HAVING m.reps <> count(a.token) OR m.reps <> coalesce(max(a.reps_after), 0)`,
  sittings: `SELECT s.id, s.handed_in_at IS NOT NULL AS "handedIn", s."right",
      coalesce(jsonb_object_agg(x.position, x.choice) FILTER (WHERE x.choice IS NOT NULL), '{}') AS sheet,
      count(*) FILTER (WHERE x."right")::int AS marked, count(a.token)::int AS recorded
    FROM sitting s LEFT JOIN sitting_answer x ON x.sitting_id = s.id LEFT JOIN answer a ON a.person_id = s.person_id AND a.token = x.token
    GROUP BY s.id`,
  packs: `SELECT p.slug, (SELECT count(*)::int FROM question q WHERE q.pack_id = p.id) AS questions,
      (SELECT count(*)::int FROM question q JOIN question_revision r ON r.question_id = q.id AND r.revision = q.current_revision WHERE q.pack_id = p.id) AS revisions,
      (SELECT count(*)::int FROM topic t WHERE t.pack_id = p.id) AS topics
    FROM pack p`,
  // An answer of a paper that no sheet knows was learnt twice; a person without a row for a question that is asked missed a pack.
  loose: `SELECT 'answer' AS what, a.token::text AS which FROM answer a WHERE a.certainty = 'unsaid' AND NOT EXISTS (SELECT FROM sitting_answer x WHERE x.token = a.token)
    UNION ALL SELECT 'memory', p.id || ' ' || q.code FROM person p CROSS JOIN question q WHERE p.role = 'candidate' AND NOT q.retired AND p.region = ANY (q.regions)
      AND NOT EXISTS (SELECT FROM memory m WHERE m.person_id = p.id AND m.question_id = q.id)`,
};

/** Starts the database alone and reads all of it. */
export async function readKept(dataFolder: string): Promise<Kept> {
  const database = await startEmbeddedPostgres({ dataFolder, log: () => undefined });
  const db = openDatabase({ url: database.url, log: () => undefined });
  try {
    const { answers, differences } = await replayAll(db, () => undefined);
    return {
      answers: await rowsOf(db, statements.answers),
      miscounted: await rowsOf(db, statements.miscounted),
      replay: { answers, differences },
      sittings: await rowsOf(db, statements.sittings),
      packs: await rowsOf(db, statements.packs),
      loose: await rowsOf(db, statements.loose),
    };
  } finally {
    await db.close();
    await database.stop();
  }
}
