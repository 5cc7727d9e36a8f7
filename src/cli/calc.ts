import { parseArgs } from 'node:util';
import { formatQuantity } from '../../shared/format.js';
import { findRegion, regions } from '../../shared/regions.js';
import type { Calculation, Outcome, Valued } from '../../shared/safety-maths/calculation.js';
import { calculations, findCalculation } from '../../shared/safety-maths/index.js';
import { readTyped } from '../../shared/safety-maths/typed-inputs.js';
import type { CommandIo } from './command.js';

const usage = 'Use: rungwise calc --list [--json]\n  or: rungwise calc <id> name=value … [--region uk|eu|na] [--json]';

/**
 * `rungwise calc`: lists the calculations, or runs one on values typed as a person types them ("power=2.2kW"); several values of a list
 * are parted by semicolons. Exit status 0, or 2 with a message that names the input that is missing, unknown, of the wrong kind or out of range.
 */
export async function run(args: string[], io: CommandIo): Promise<number> {
  try {
    const { values, positionals } = parseArgs({
      args,
      options: {
        list: { type: 'boolean', default: false },
        region: { type: 'string', default: 'uk' },
        json: { type: 'boolean', default: false },
      },
      allowPositionals: true,
    });
    if (values.list) {
      io.out(
        values.json ? JSON.stringify(calculations.map(listed)) : calculations.map(({ id, title }) => `${id.padEnd(38)}${title}`).join('\n'),
      );
      return 0;
    }
    const [id, ...given] = positionals;
    if (id === undefined) throw new Error('name a calculation');
    const calculation = findCalculation(id);
    if (calculation === undefined) throw new Error(`there is no calculation ${JSON.stringify(id)}; calc --list shows them`);
    const region = findRegion(values.region);
    if (region === null)
      throw new Error(`--region: there is no region ${JSON.stringify(values.region)}; give one of ${Object.keys(regions).join(', ')}`);
    const outcome = calculation.run(typedInputs(given, calculation), region.id);
    io.out(values.json ? JSON.stringify(asJson(calculation, outcome)) : asText(calculation, outcome));
    return 0;
  } catch (error) {
    io.err(`calc: ${error instanceof Error ? error.message : String(error)}\n${usage}`);
    return 2;
  }
}

const listed = ({ id, title, inputs, outputs, source, validity, rule, caution }: Calculation): object => ({
  id,
  title,
  inputs: inputs.map(({ name, kind, unit, min, max, choices, optional }) => ({ name, kind, unit, min, max, choices, optional })),
  outputs,
  source,
  validity,
  rule,
  caution,
});

const asJson = ({ id, source, caution }: Calculation, { region, inputs, result, working }: Outcome): object => ({
  id,
  region,
  inputs,
  result,
  working,
  source,
  caution,
});

function typedInputs(given: readonly string[], calculation: Calculation): Record<string, unknown> {
  const inputs = new Map<string, unknown>();
  for (const one of given) {
    const equals = one.indexOf('=');
    if (equals < 1) throw new Error(`${JSON.stringify(one)} is not an input; write name=value`);
    const name = one.slice(0, equals).trim();
    const spec = calculation.inputs.find((input) => input.name === name);
    if (spec === undefined)
      throw new Error(`${name}: there is no such input; there are ${calculation.inputs.map((input) => input.name).join(', ')}`);
    if (inputs.has(name)) throw new Error(`${name}: is given twice; give it once`);
    inputs.set(name, readTyped(spec, [one.slice(equals + 1)]));
  }
  return Object.fromEntries(inputs);
}

function asText(calculation: Calculation, { working, result }: Outcome): string {
  const results = Object.entries(result).map(([name, valued]) => `  ${name} = ${shown(valued)}`);
  const sources = calculation.source.map(({ title, publisher, where }) => `  ${title}, ${publisher}, ${where}`);
  return [calculation.title, ...working.map((step) => `  ${step}`), 'Result', ...results, 'Source', ...sources, calculation.caution].join(
    '\n',
  );
}

function shown({ value, unit }: Valued): string {
  if (typeof value === 'number') return formatQuantity(value, unit ?? '');
  return value === null ? 'none' : value === true ? 'yes' : value === false ? 'no' : String(value);
}
