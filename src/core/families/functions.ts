import { CalculationInputError } from '../../../shared/safety-maths/inputs.js';
import { calculations } from '../../../shared/safety-maths/index.js';
import type { Calculation } from '../../../shared/safety-maths/calculation.js';
import type { Region } from '../syllabus.js';

/** The functions that expressions may call. Each takes numbers and, where marked, printed lists; a miss is not a number. */

export type Value = number | readonly number[];

interface Signature {
  takes: readonly ('number' | 'list')[];
  work: (args: readonly Value[], region: Region) => number;
  /** What a call costs at most, in nodes, besides its values. */
  cost: number;
  /** For one of the safety maths: the calculation whose first output it gives. */
  calculation?: Calculation;
}

/** A function over a list counts as long as the longest list. */
const listCost = 40;

const num = (args: readonly Value[], i: number): number => args[i] as number;
const list = (args: readonly Value[], i: number): readonly number[] => args[i] as readonly number[];

function numeric(count: 1 | 2, work: (x: number, y: number) => number): Signature {
  return { takes: Array.from({ length: count }, () => 'number' as const), work: (args) => work(num(args, 0), num(args, 1)), cost: 0 };
}

function onList(choose: (x: number, items: readonly number[]) => number): Signature {
  return { takes: ['number', 'list'], work: (args) => choose(num(args, 0), list(args, 1)), cost: listCost };
}

/** Looks for the first key that fits and gives the value beside it. */
function beside(fits: (key: number, x: number) => boolean): Signature {
  return {
    takes: ['number', 'list', 'list'],
    work: (args) => {
      const position = list(args, 1).findIndex((key) => fits(key, num(args, 0)));
      return list(args, 2)[position] ?? NaN;
    },
    cost: listCost,
  };
}

const least = (items: readonly number[]): number => (items.length === 0 ? NaN : Math.min(...items));
const most = (items: readonly number[]): number => (items.length === 0 ? NaN : Math.max(...items));

/** By name, in a Map, so that no name reaches anything that was not put here. */
const functions: ReadonlyMap<string, Signature> = new Map<string, Signature>([
  ['sqrt', numeric(1, Math.sqrt)],
  ['pow', numeric(2, Math.pow)],
  ['ln', numeric(1, Math.log)],
  ['log10', numeric(1, Math.log10)],
  ['abs', numeric(1, Math.abs)],
  ['min', numeric(2, Math.min)],
  ['max', numeric(2, Math.max)],
  ['atan', numeric(1, Math.atan)],
  ['atanDeg', numeric(1, (x) => (Math.atan(x) * 180) / Math.PI)],
  ['nextUp', onList((x, items) => least(items.filter((item) => item >= x)))],
  ['nextDown', onList((x, items) => most(items.filter((item) => item <= x)))],
  ['downOrZero', onList((x, items) => Math.max(0, ...items.filter((item) => item <= x)))],
  ['stepUp', onList((x, items) => least(items.filter((item) => item > x)))],
  ['stepDown', onList((x, items) => most(items.filter((item) => item < x)))],
  ['pick', beside((key, x) => key >= x)],
  ['pickLE', beside((key, x) => key <= x)],
  ['look', beside((key, x) => key === x)],
]);

export const functionNames: readonly string[] = [...functions.keys()];

/**
 * The safety maths as functions: current-from-power is called currentFromPower(P, V). It takes the inputs that may not be left out, in
 * their order and in the calculation's own units, and gives its first output; what is left out comes from the family's region. Values
 * that the calculation refuses make it not a number. A calculation that must be given a word cannot be called.
 */
function callable(calculation: Calculation): [string, Signature][] {
  const needed = calculation.inputs.filter(({ optional }) => !optional);
  const [output] = calculation.outputs;
  if (output === undefined || output.unit === null || needed.length === 0 || needed.some(({ kind }) => kind === 'choice')) return [];
  const name = calculation.id.replace(/-([a-z0-9])/g, (_dash, letter: string) => letter.toUpperCase());
  const work: Signature['work'] = (args, region) => {
    const inputs = Object.fromEntries(needed.map((input, i) => [input.name, args[i]]));
    try {
      const value = calculation.run(inputs, region).result[output.name]?.value;
      return typeof value === 'number' ? value : NaN;
    } catch (error) {
      if (error instanceof CalculationInputError) return NaN;
      throw error;
    }
  };
  return [[name, { takes: needed.map(({ kind }) => (kind === 'list' ? 'list' : 'number')), work, cost: 100, calculation }]];
}

const maths: ReadonlyMap<string, Signature> = new Map(calculations.flatMap(callable));

/** The function of that name, or undefined. */
export const functionNamed = (name: string): Signature | undefined => functions.get(name) ?? maths.get(name);
