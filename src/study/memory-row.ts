import type { Memory } from '../core/memory.js';

/** A memory as the database keeps it: all three, or none before the first answer. */
export function memoryOf(row: { stability: number | null; difficulty: number | null; lastDay: number | null }): Memory | null {
  if (row.stability === null || row.difficulty === null || row.lastDay === null) return null;
  return { stability: row.stability, difficulty: row.difficulty, lastDay: row.lastDay };
}
