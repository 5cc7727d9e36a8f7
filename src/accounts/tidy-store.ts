import type { Db } from '../platform/db.js';

/**
 * Takes away sessions that have run out and counters of guesses whose window is long over. Nothing depends on it: both are
 * refused or begun anew when they are met.
 */
export async function tidyAccounts(db: Db, now: Date): Promise<{ sessions: number; guesses: number }> {
  // A paper that runs keeps its session (sessions.ts).
  const sessions = await db.pool.query(
    `DELETE FROM session s WHERE expires_at < $1 AND NOT EXISTS
       (SELECT 1 FROM sitting p WHERE p.person_id = s.person_id AND p.started_at IS NOT NULL AND p.handed_in_at IS NULL AND p.deadline_at > $1)`,
    [now],
  );
  const guesses = await db.pool.query('DELETE FROM guess WHERE window_start < $1', [new Date(now.getTime() - 86_400_000)]);
  return { sessions: sessions.rowCount ?? 0, guesses: guesses.rowCount ?? 0 };
}
