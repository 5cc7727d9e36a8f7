/** The functions that expressions may call. Each takes numbers and, where marked, printed lists; a miss is not a number. */

export type Value = number | readonly number[];

interface Signature {
  takes: readonly ('number' | 'list')[];
  work: (args: readonly Value[]) => number;
}

const num = (args: readonly Value[], i: number): number => args[i] as number;
const list = (args: readonly Value[], i: number): readonly number[] => args[i] as readonly number[];

function numeric(count: 1 | 2, work: (x: number, y: number) => number): Signature {
  return { takes: Array.from({ length: count }, () => 'number' as const), work: (args) => work(num(args, 0), num(args, 1)) };
}

function onList(choose: (x: number, items: readonly number[]) => number): Signature {
  return { takes: ['number', 'list'], work: (args) => choose(num(args, 0), list(args, 1)) };
}

/** Looks for the first key that fits and gives the value beside it. */
function beside(fits: (key: number, x: number) => boolean): Signature {
  return {
    takes: ['number', 'list', 'list'],
    work: (args) => {
      const position = list(args, 1).findIndex((key) => fits(key, num(args, 0)));
      return list(args, 2)[position] ?? NaN;
    },
  };
}

const least = (items: readonly number[]): number => (items.length === 0 ? NaN : Math.min(...items));
const most = (items: readonly number[]): number => (items.length === 0 ? NaN : Math.max(...items));

/** By name, in a Map, so that no name reaches anything that was not put here. */
export const functions: ReadonlyMap<string, Signature> = new Map<string, Signature>([
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
