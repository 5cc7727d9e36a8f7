import { parseArgs } from 'node:util';
import { SetUpError } from '../platform/set-up-error.js';
import { replayAll, type ReplayReport } from '../study/index.js';
import type { CommandIo } from './command.js';
import { withDatabase } from './with-database.js';

const usage = 'Use: rungwise replay --verify [--json]';

/**
 * `rungwise replay --verify [--json]`: rebuilds every memory from the record of answers and reports any difference; nothing is changed.
 * Answers 0 when all agree, 1 when something differs, 2 when it could not be tried.
 */
export async function run(args: string[], io: CommandIo): Promise<number> {
  let json: boolean;
  try {
    const { values } = parseArgs({
      args,
      options: { json: { type: 'boolean', default: false }, verify: { type: 'boolean', default: false } },
    });
    if (!values.verify) throw new Error('Say --verify: it is the one thing that a replay does.');
    json = values.json;
  } catch (error) {
    io.err(`${error instanceof Error ? (error.message.split('\n')[0] ?? '') : 'The command was not understood.'}\n${usage}`);
    return 2;
  }
  try {
    const report = await withDatabase(io, (db) => replayAll(db, (people) => io.err(`${people} people replayed`)));
    io.out(json ? JSON.stringify(report) : words(report));
    return report.differences.length === 0 ? 0 : 1;
  } catch (error) {
    io.err(error instanceof SetUpError ? `${error.message}\n${error.advice}` : `The database could not be used: ${String(error)}`);
    return 2;
  }
}

const most = 50;

function words({ people, answers, memories, differences }: ReplayReport): string {
  const head = `${answers} answers of ${people} people to ${memories} questions replayed: ${differences.length === 0 ? 'no difference.' : `${differences.length} differences.`}`;
  const lines = differences.slice(0, most).map(({ personId, question, what }) => `  person ${personId}, ${question}: ${what}`);
  return [head, ...lines, ...(differences.length > most ? [`  and ${differences.length - most} more`] : [])].join('\n');
}
