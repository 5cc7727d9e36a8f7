import { readFile } from 'node:fs/promises';
import { parseArgs } from 'node:util';
import { describeReading } from '../../shared/numeric-answer/describe.js';
import { readQuantity } from '../../shared/numeric-answer/parse.js';
import type { Reading } from '../../shared/numeric-answer/parse.js';
import { findUnit } from '../../shared/numeric-answer/units.js';
import type { CommandIo } from './command.js';

const usage = 'Use: rungwise read --expect <unit> [--json] -- "<typed text>"\n  or: rungwise read --batch <file.json> [--json]';

type Asked = { readonly text: string; readonly expect: string };

/**
 * `rungwise read`: reads typed answers as the pages do. One text: exit status 0 when understood, 1 when not. A batch, an array of
 * `{ "text", "expect" }`: one result for each, in order, exit status 0. 2 for a mistyped command, an unknown unit or a file that cannot be used.
 */
export async function run(args: string[], io: CommandIo): Promise<number> {
  try {
    const { values, positionals } = parseArgs({
      args,
      options: { expect: { type: 'string' }, batch: { type: 'string' }, json: { type: 'boolean', default: false } },
      allowPositionals: true,
    });
    if (values.batch !== undefined) {
      if (values.expect !== undefined || positionals.length > 0) throw new Error('with --batch, the units and texts stand in the file');
      return await readBatch(values.batch, values.json, io);
    }
    if (values.expect === undefined) throw new Error('--expect is missing: name the unit of the answer, such as W');
    if (findUnit(values.expect) === null)
      throw new Error(`--expect: there is no unit ${JSON.stringify(values.expect)}; give one such as W, mm², ohm or dB(A)`);
    if (positionals.length === 0) throw new Error('the text is missing: give it after --');
    const reading = readQuantity(positionals.join(' '), values.expect);
    io.out(values.json ? JSON.stringify(plain(reading)) : describeReading(reading));
    return reading.understood ? 0 : 1;
  } catch (error) {
    io.err(`read: ${error instanceof Error ? error.message : String(error)}\n${usage}`);
    return 2;
  }
}

async function readBatch(file: string, json: boolean, io: CommandIo): Promise<number> {
  let content: unknown;
  try {
    content = JSON.parse(await readFile(file, 'utf8'));
  } catch (error) {
    throw new Error(`${file}: ${error instanceof Error ? error.message : 'cannot be read'}`, { cause: error });
  }
  const readings = asked(content, file).map(({ text, expect }, index) => {
    if (findUnit(expect) === null) io.err(`${file}: entry ${index + 1}: there is no unit ${JSON.stringify(expect)}`);
    return readQuantity(text, expect);
  });
  io.out(json ? JSON.stringify(readings.map(plain)) : readings.map(describeReading).join('\n'));
  return 0;
}

function asked(content: unknown, file: string): Asked[] {
  if (!Array.isArray(content)) throw new Error(`${file}: must hold an array of { "text", "expect" }`);
  return content.map((entry: unknown, index) => {
    const { text, expect } = (typeof entry === 'object' && entry !== null ? entry : {}) as Partial<Record<string, unknown>>;
    if (typeof text !== 'string') throw new Error(`${file}: entry ${index + 1}: "text" must be a text`);
    if (typeof expect !== 'string') throw new Error(`${file}: entry ${index + 1}: "expect" must be a unit, such as "W"`);
    return { text, expect };
  });
}

/** The reading in the form the command promises: without what only pages need. */
function plain(reading: Reading): object {
  if (!reading.understood) return reading;
  const { understood, value, unit, si } = reading;
  return { understood, value, unit, si };
}
