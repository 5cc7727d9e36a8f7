import { memoryModel } from '../core/memory.js';
import { replay, type LoggedAnswer } from '../core/replay.js';
import type { Db } from '../platform/db.js';
import { memoryOf } from './memory-row.js';
import { logOf, peopleAfter, type LogRow } from './replay-store.js';

/** Rebuilds every memory from the record of answers and says where the two differ. Changes nothing. */

export interface ReplayReport {
  people: number;
  answers: number;
  memories: number;
  differences: { personId: number; question: string; what: string }[];
}

const peopleAtOnce = 50;

export async function replayAll(db: Db, progress: (people: number) => void): Promise<ReplayReport> {
  const report: ReplayReport = { people: 0, answers: 0, memories: 0, differences: [] };
  const model = memoryModel();
  for (
    let people = await peopleAfter(db, 0, peopleAtOnce);
    people.length > 0;
    people = await peopleAfter(db, people.at(-1) ?? 0, peopleAtOnce)
  ) {
    const rows = await logOf(db, people);
    for (const group of grouped(rows)) {
      const [first] = group as [LogRow];
      const kept = { memory: memoryOf(first), revision: first.currentRevision };
      const { differences } = replay(group.map(loggedOf), kept, model);
      report.memories += 1;
      report.differences.push(...differences.map((what) => ({ personId: first.personId, question: first.code, what })));
    }
    report.people += people.length;
    report.answers += rows.length;
    progress(report.people);
  }
  return report;
}

function grouped(rows: readonly LogRow[]): LogRow[][] {
  const groups: LogRow[][] = [];
  for (const row of rows) {
    const last = groups.at(-1)?.[0];
    if (last !== undefined && last.personId === row.personId && last.questionId === row.questionId) groups.at(-1)?.push(row);
    else groups.push([row]);
  }
  return groups;
}

function loggedOf(row: LogRow): LoggedAnswer {
  const lastDay = row.rating === null ? row.lastDayBefore : row.day;
  return {
    revision: row.revision,
    day: row.day,
    rating: row.rating,
    before: memoryOf({ stability: row.stabilityBefore, difficulty: row.difficultyBefore, lastDay: row.lastDayBefore }),
    after: memoryOf({ stability: row.stabilityAfter, difficulty: row.difficultyAfter, lastDay }),
  };
}
