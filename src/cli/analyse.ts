import { readFile, stat } from 'node:fs/promises';
import { parseArgs } from 'node:util';
import { readAnswers, type PlacedFault } from '../analysis/index.js';
import { analyse, type Analysis } from '../core/analysis/analyse.js';
import { notesOf } from '../core/analysis/notes.js';
import { analysisText } from './analysis-text.js';
import type { CommandIo } from './command.js';

/** `analyse <responses.csv>`: a table of candidates by questions in, what the questions and the paper are worth out. */

const usage = 'npx rungwise analyse <responses.csv> [--key <key.csv>] [--json]';

const megabytes = 20;
const limits = {
  table: { rows: 100_000, columns: 1001, rowSize: 100_000, tooMany: 'Take a part of them.' },
  bytes: megabytes * 2 ** 20,
  cells: 2_000_000,
};

export async function run(args: string[], io: CommandIo): Promise<number> {
  try {
    const { values, positionals } = parseArgs({
      args,
      options: { json: { type: 'boolean', default: false }, key: { type: 'string' } },
      allowPositionals: true,
    });
    const [file, ...more] = positionals;
    if (file === undefined || more.length > 0) throw new Error(`give one file with the answers\n${usage}`);
    const key = values.key === undefined ? null : await bytesOf(values.key);
    const read = readAnswers({ answers: await bytesOf(file), key }, limits);
    if ('faults' in read) {
      const names = { answers: file, key: values.key ?? '' };
      io.err(read.faults.map((fault) => faultText(names[fault.table], fault)).join('\n'));
      return 2;
    }
    const analysis = analyse(read.responses);
    io.out(values.json ? JSON.stringify(asJson(analysis), null, 2) : analysisText(analysis));
    return 0;
  } catch (error) {
    io.err(error instanceof Error ? error.message : String(error));
    return 2;
  }
}

/** What is too large is refused before it is read. */
async function bytesOf(file: string): Promise<Uint8Array> {
  try {
    const { size } = await stat(file);
    if (size > limits.bytes) throw new Error(`it has ${Math.ceil(size / 2 ** 20)} MB, and ${megabytes} MB is the most`);
    return await readFile(file);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    const why =
      code === 'ENOENT' ? 'there is no such file' : code === 'EISDIR' ? 'this is a folder; name a file' : (error as Error).message;
    throw new Error(`${file}: ${why}\n${usage}`);
  }
}

const faultText = (file: string, { line, why }: PlacedFault): string => `${file}${line === null ? '' : `:${line}`}: ${why}`;

/** The names and the order are those that outside programs read. */
function asJson(analysis: Analysis) {
  const { n, k, mean, sd, kr20, sem } = analysis.paper;
  return {
    paper: { n, k, mean, sd, kr20, sem },
    questions: analysis.questions.map((question) => ({
      id: question.id,
      n: question.n,
      facility: question.facility,
      facilityLow: question.facilityInterval?.low ?? null,
      facilityHigh: question.facilityInterval?.high ?? null,
      itemTotal: question.itemTotal,
      itemRest: question.itemRest,
      upperLower27: question.upperLower27,
      alphaIfDropped: question.alphaIfDropped,
      options: question.options.map(({ option, count, itemTotal, itemRest }) => ({ option, count, itemTotal, itemRest })),
    })),
    notes: notesOf(analysis),
  };
}
