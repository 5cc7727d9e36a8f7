import { matchUnit } from '../numeric-answer/match.js';
import { convert, findUnit } from '../numeric-answer/units.js';
import type { Calculation, CheckName } from './calculation.js';
import { CalculationInputError } from './inputs.js';
import { calculations } from './index.js';

/** One published check value: the unit stands at the end of each key, as in power_W or power_density_W_m2. */
export interface CheckRecord {
  readonly id: string;
  readonly function: string;
  readonly inputs: Readonly<Record<string, unknown>>;
  readonly expected: Readonly<Record<string, unknown>>;
  /** Absolute 0 means exact, to the last figures that binary arithmetic can give. */
  readonly tolerance: { readonly type: 'relative' | 'absolute'; readonly value: number };
}

export interface CheckOutcome {
  readonly id: string;
  readonly function: string;
  /** unknown: there is no such calculation here. */
  readonly outcome: 'passed' | 'failed' | 'unknown';
  readonly expected: Readonly<Record<string, unknown>>;
  /** What came out, under the keys of `expected`; or why nothing did. */
  readonly got: Readonly<Record<string, unknown>> | string | null;
}

const byCheckName = new Map<string, { calculation: Calculation; check: CheckName }>(
  calculations.flatMap((calculation) => calculation.checks.map((check) => [check.name, { calculation, check }] as const)),
);

/** Runs one check value through the calculation that answers to its function's name. */
export function checkRecord(record: CheckRecord): CheckOutcome {
  const found = byCheckName.get(record.function);
  const about = { id: record.id, function: record.function, expected: record.expected };
  if (found === undefined) return { ...about, outcome: 'unknown', got: null };
  const { calculation, check } = found;
  try {
    const outcome = calculation.run({ ...inputsOf(record, calculation, check), ...check.inputs });
    const got = Object.fromEntries(Object.keys(record.expected).map((key) => [key, resultOf(key, outcome.result, check)]));
    const agrees = Object.entries(record.expected).every(([key, expected]) => isWithin(got[key], expected, record.tolerance));
    return { ...about, outcome: agrees ? 'passed' : 'failed', got };
  } catch (error) {
    if (error instanceof CalculationInputError) return { ...about, outcome: 'failed', got: error.message };
    throw error;
  }
}

function inputsOf(record: CheckRecord, calculation: Calculation, check: CheckName): Record<string, unknown> {
  const kept = Object.entries(record.inputs).filter(([key]) => check.ignore?.includes(key) !== true);
  return Object.fromEntries(
    kept.map(([key, value]) => {
      const renamed = check.keys?.[key];
      if (renamed !== undefined) return [renamed, value];
      const input = calculation.inputs.find(({ name, unit }) => factorOf(key, name, unit) !== null);
      if (input === undefined) throw new CalculationInputError(key, `the calculation ${calculation.id} has no such input`);
      return [input.name, inUnit(value, key, input.name, input.unit, 'in')];
    }),
  );
}

function resultOf(key: string, result: Readonly<Record<string, { value: unknown; unit: string | null }>>, check: CheckName): unknown {
  const renamed = check.keys?.[key];
  if (renamed !== undefined) return result[renamed]?.value;
  const name = Object.keys(result).find((one) => factorOf(key, one, result[one]?.unit ?? null) !== null);
  const valued = name === undefined ? undefined : result[name];
  return name === undefined || valued === undefined ? undefined : inUnit(valued.value, key, name, valued.unit, 'out');
}

/** The unit a key ends in, if the key is that name with a unit of the same kind; the name alone means the name's own unit. */
function factorOf(key: string, name: string, unit: string | null): string | null {
  if (key === name) return unit ?? '';
  if (unit === null || !key.startsWith(`${name}_`)) return null;
  const expected = findUnit(unit);
  const ending = key.slice(name.length + 1).replace(/_per_/g, '/');
  if (expected === null) return null;
  for (const spelling of [ending, ending.replace('_', '/')]) {
    const match = matchUnit(spelling, expected);
    if (match.kind === 'unit') return spelling;
  }
  return null;
}

function inUnit(value: unknown, key: string, name: string, unit: string | null, way: 'in' | 'out'): unknown {
  if (Array.isArray(value)) return value.map((one: unknown) => inUnit(one, key, name, unit, way));
  const spelling = factorOf(key, name, unit);
  const own = unit === null ? null : findUnit(unit);
  if (typeof value !== 'number' || own === null || spelling === null || key === name) return value;
  const match = matchUnit(spelling, own);
  if (match.kind !== 'unit') return value;
  return way === 'in' ? convert(value, match.unit, own) : convert(value, own, match.unit);
}

function isWithin(got: unknown, expected: unknown, tolerance: CheckRecord['tolerance']): boolean {
  if (Array.isArray(expected)) {
    return (
      Array.isArray(got) && got.length === expected.length && expected.every((one: unknown, index) => isWithin(got[index], one, tolerance))
    );
  }
  if (typeof expected !== 'number' || typeof got !== 'number') return got === expected;
  const noise = Math.abs(expected) * 1e-12;
  const room = tolerance.type === 'relative' ? Math.abs(expected) * tolerance.value : tolerance.value;
  return Math.abs(got - expected) <= Math.max(room, noise);
}
