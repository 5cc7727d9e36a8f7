import type { Db } from '../platform/db.js';

/** Queries of the counter of guesses. */

export async function takeGuess(db: Db, key: Buffer, now: Date, windowSeconds: number): Promise<{ count: number; windowStart: Date }> {
  const { rows } = await db.pool.query<{ count: number; windowStart: Date }>({
    name: 'guess-take',
    text: `INSERT INTO guess AS g (key, count, window_start) VALUES ($1, 1, $2)
           ON CONFLICT (key) DO UPDATE SET
             count = CASE WHEN g.window_start <= $3 THEN 1 ELSE g.count + 1 END,
             window_start = CASE WHEN g.window_start <= $3 THEN $2 ELSE g.window_start END
           RETURNING count, window_start AS "windowStart"`,
    values: [key, now, new Date(now.getTime() - windowSeconds * 1000)],
  });
  return rows[0] as { count: number; windowStart: Date };
}

export async function giveBackGuess(db: Db, key: Buffer): Promise<void> {
  await db.pool.query({ name: 'guess-back', text: 'UPDATE guess SET count = greatest(count - 1, 0) WHERE key = $1', values: [key] });
}
