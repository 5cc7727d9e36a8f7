import { readFile } from 'node:fs/promises';
import { parseArgs } from 'node:util';
import { checkRecord } from '../../shared/safety-maths/check-record.js';
import type { CheckRecord } from '../../shared/safety-maths/check-record.js';
import type { CommandIo } from './command.js';

const usage = 'Use: rungwise check-values <file.json> [--json]';

/**
 * `rungwise check-values <file.json>`: holds the safety maths against published values, records of `id`, `function`, `inputs`, `expected`
 * and `tolerance` with the unit at the end of each key. Exit status 0 when none failed, 1 when some did, 2 when the file cannot be used.
 */
export async function run(args: string[], io: CommandIo): Promise<number> {
  try {
    const { values, positionals } = parseArgs({ args, options: { json: { type: 'boolean', default: false } }, allowPositionals: true });
    const [file, ...more] = positionals;
    if (file === undefined || more.length > 0) throw new Error('name one file of values');
    const outcomes = (await records(file)).map(checkRecord);
    const passed = outcomes.filter(({ outcome }) => outcome === 'passed').length;
    const failed = outcomes
      .filter(({ outcome }) => outcome === 'failed')
      .map(({ id, function: name, expected, got }) => ({ id, function: name, expected, got }));
    const unknown = outcomes.filter(({ outcome }) => outcome === 'unknown').map(({ id, function: name }) => ({ id, function: name }));
    if (values.json) io.out(JSON.stringify({ passed, failed, unknown }));
    else
      io.out(
        [`${passed} passed, ${failed.length} failed, ${unknown.length} not known here`, ...failed.map((one) => JSON.stringify(one))].join(
          '\n',
        ),
      );
    return failed.length > 0 ? 1 : 0;
  } catch (error) {
    io.err(`check-values: ${error instanceof Error ? error.message : String(error)}\n${usage}`);
    return 2;
  }
}

async function records(file: string): Promise<CheckRecord[]> {
  let content: unknown;
  try {
    content = JSON.parse(await readFile(file, 'utf8'));
  } catch (error) {
    throw new Error(`${file}: ${error instanceof Error ? error.message : 'cannot be read'}`, { cause: error });
  }
  if (!Array.isArray(content)) throw new Error(`${file}: must hold an array of records`);
  return content.map((entry: unknown, index) => {
    if (!isRecord(entry))
      throw new Error(
        `${file}: record ${index + 1} must have "id", "function", "inputs", "expected" and "tolerance" with "type" and "value"`,
      );
    return entry;
  });
}

const isObject = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null && !Array.isArray(value);

function isRecord(value: unknown): value is CheckRecord & Record<string, unknown> {
  if (!isObject(value) || !isObject(value['tolerance'])) return false;
  const { type, value: room } = value['tolerance'];
  const named = typeof value['id'] === 'string' && typeof value['function'] === 'string';
  return (
    named &&
    isObject(value['inputs']) &&
    isObject(value['expected']) &&
    (type === 'relative' || type === 'absolute') &&
    typeof room === 'number' &&
    room >= 0
  );
}
