import type { Db } from '../platform/db.js';

/** Queries behind the streams: few, and about all who listen at once. */

export interface ChangeRow {
  eveningId: string;
  change: number;
  /** Choices on phones so far, of the question before the class. */
  answered: number;
  ended: boolean;
}

export async function changesOf(db: Db, eveningIds: readonly string[]): Promise<ChangeRow[]> {
  const { rows } = await db.pool.query<ChangeRow>({
    name: 'evening-changes',
    text: `SELECT e.id AS "eveningId", e.change, e.ended_at IS NOT NULL AS ended,
             (SELECT count(*)::int FROM evening_answer a WHERE a.evening_id = e.id AND a.position = e.place) AS answered
           FROM evening e WHERE e.id = ANY ($1)`,
    values: [eveningIds],
  });
  return rows;
}

/** Of these sessions, those that still hold and may still listen: members of the class, its tutors, administrators. */
export async function sessionsThatMay(db: Db, eveningId: string, sessions: readonly Buffer[], now: Date): Promise<Set<string>> {
  const { rows } = await db.pool.query<{ session: string }>({
    name: 'evening-sessions',
    text: `SELECT encode(s.id_hash, 'hex') AS session FROM session s JOIN person p ON p.id = s.person_id JOIN evening e ON e.id = $1
           WHERE s.id_hash = ANY ($2) AND s.expires_at > $3
             AND (p.role = 'administrator'
               OR (p.role = 'tutor' AND EXISTS (SELECT FROM class_tutor t WHERE t.class_id = e.class_id AND t.person_id = p.id))
               OR (p.role = 'candidate' AND EXISTS (SELECT FROM class_member m WHERE m.class_id = e.class_id AND m.person_id = p.id)))`,
    values: [eveningId, sessions, now],
  });
  return new Set(rows.map(({ session }) => session));
}
