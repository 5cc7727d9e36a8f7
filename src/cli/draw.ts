import { parseArgs } from 'node:util';
import { compileFamily, draw, fourOptions, type Draw } from '../core/families/draw.js';
import { nearest } from '../core/nearest.js';
import type { Pack } from '../core/pack.js';
import { regionIds, type Region } from '../core/syllabus.js';
import { readPackFolder } from '../packs/index.js';
import type { CommandIo } from './command.js';

/** `draw <family>`: fresh numbers from a family of a pack, with the answer, the working and the mistakes it knows. */

const usage = 'npx rungwise draw <family> [--seed <n>] [--count <n>] [--region uk|eu|na] [--pack <folder>] [--json]';
const shippedPack = 'question-packs/entry-safety';
const mostAtOnce = 1000;

interface Request {
  family: string;
  seed: number;
  /** Null for one draw, printed by itself and not as a list. */
  count: number | null;
  region: Region;
  folder: string;
  json: boolean;
}

/** Exit 0 with the draws, 2 for a wrong usage, an unreadable pack, an unknown family, or a family that its region does not offer. */
export async function run(args: string[], io: CommandIo): Promise<number> {
  try {
    const request = readArgs(args);
    const pack = await readPack(request.folder);
    const draws = drawAll(pack, request);
    if (request.json) io.out(JSON.stringify(request.count === null ? asJson(pack, request, draws)[0] : asJson(pack, request, draws)));
    else io.out(draws.map((each) => asText(pack, each)).join('\n\n'));
    return 0;
  } catch (error) {
    io.err(`draw: ${error instanceof Error ? error.message : String(error)}\n${usage}`);
    return 2;
  }
}

function readArgs(args: string[]): Request {
  const { values, positionals } = parseArgs({
    args,
    allowPositionals: true,
    options: {
      seed: { type: 'string', default: '1' },
      count: { type: 'string' },
      region: { type: 'string', default: 'uk' },
      pack: { type: 'string', default: shippedPack },
      json: { type: 'boolean', default: false },
    },
  });
  const [family, ...more] = positionals;
  if (family === undefined || more.length > 0) throw new Error('give the name of one family, such as nf-ladder-base');
  const region = regionIds.find((known) => known === values.region);
  if (region === undefined) throw new Error(`--region ${shown(values.region)} is not a region: give ${regionIds.join(', ')}`);
  const count = values.count === undefined ? null : whole('--count', values.count, 1, mostAtOnce);
  return { family, seed: whole('--seed', values.seed, 0, 1e12), count, region, folder: values.pack, json: values.json };
}

const shown = (text: string): string => JSON.stringify(text.slice(0, 60));

function whole(option: string, text: string, least: number, most: number): number {
  const value = /^\d{1,15}$/.test(text) ? Number(text) : NaN;
  if (!(value >= least && value <= most)) throw new Error(`${option} ${shown(text)} is not a whole number from ${least} to ${most}`);
  return value;
}

async function readPack(folder: string): Promise<Pack> {
  const { pack, findings } = await readPackFolder(folder);
  if (pack !== null) return pack;
  const errors = findings.filter(({ level }) => level === 'error');
  const first = errors.slice(0, 5).map(({ file, line, column, message }) => `  ${file}:${line}:${column} ${message}`);
  const rest = errors.length > 5 ? [`  and ${errors.length - 5} more: npx rungwise check ${folder}`] : [];
  throw new Error([`the pack ${shown(folder)} cannot be used as it is:`, ...first, ...rest].join('\n'));
}

function drawAll(pack: Pack, { family: id, seed, count, region }: Request): Draw[] {
  const family = pack.families.find((known) => known.id === id);
  if (family === undefined) {
    const ids = pack.families.map((known) => known.id);
    const guess = nearest(id.slice(0, 60), ids);
    throw new Error(
      `there is no family ${shown(id)} in ${pack.head.id}; ${guess === null ? `there are ${ids.join(', ')}` : `did you mean ${guess}?`}`,
    );
  }
  const compiled = compileFamily(family, region);
  if (compiled === null) {
    const { note } = family.regions[region];
    throw new Error(`${id} is not offered in region ${region}${note === undefined ? '' : `: ${note}`}`);
  }
  return Array.from({ length: count ?? 1 }, (_, i) => draw(compiled, seed + i));
}

function cautionText(pack: Pack, key: string): string {
  return pack.cautions.find(({ id }) => id === key)?.text ?? key;
}

function asJson(pack: Pack, request: Request, draws: Draw[]) {
  return draws.map((drawn, i) => withoutTheRest(pack, request.seed + i, drawn));
}

/** Options of a number are those it is put with on paper; null where a draw has too few believable mistakes. */
function withoutTheRest(pack: Pack, seed: number, drawn: Draw) {
  const { family, revision, region, stem, inputs, key, working, tellTales, caution, calculator } = drawn;
  return {
    family,
    revision,
    seed,
    region,
    stem,
    inputs,
    key: { value: key.value, shown: key.shown, unit: key.unit, acceptFrom: key.acceptFrom, acceptTo: key.acceptTo, sigFigs: key.sigFigs },
    working,
    tellTales: tellTales.map(({ name, label, tell, direction, value, unit }) => ({ name, label, tell, direction, value, unit })),
    options: drawn.options ?? fourOptions(drawn),
    calculator: calculator === null ? null : { id: calculator.id, inputs: calculator.inputs },
    caution: cautionText(pack, caution),
  };
}

function asText(pack: Pack, drawn: Draw): string {
  const { family, seed, region, stem, answerText, acceptText, working, tellTales, caution } = drawn;
  const options = drawn.options ?? fourOptions(drawn);
  return [
    `${family}, seed ${seed}, region ${region}`,
    stem,
    ...(options === null ? [] : [`Options: ${options.map(({ text }) => text).join(', ')}`]),
    `Answer: ${answerText}. ${acceptText}`,
    'Working:',
    ...working.map((line) => `  ${line}`),
    'Wrong answers that tell why:',
    ...tellTales.map(({ value, unit, label, tell }) => `  ${Number(value.toPrecision(4))} ${unit}: ${label}. ${tell}`),
    cautionText(pack, caution),
  ].join('\n');
}
