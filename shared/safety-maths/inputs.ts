import { formatQuantity } from '../format.js';
import type { Region } from '../regions.js';

/** The inputs of a calculation: how they are declared, and how given values are held against that. */

/** A value of a calculation. null: there is no such value, as when no listed fuse is large enough. */
export type MathsValue = number | string | boolean | readonly number[] | null;

export interface InputSpec {
  readonly name: string;
  readonly label: string;
  /** quantity: one number in `unit`; list: several such numbers; choice: one of `choices`. */
  readonly kind: 'quantity' | 'list' | 'choice';
  /** null for a choice; '' for a plain number. */
  readonly unit: string | null;
  readonly min: number | null;
  readonly max: number | null;
  readonly choices: readonly string[] | null;
  readonly optional: boolean;
  /** Where an input that is left out comes from. */
  readonly fromRegion: 'supplyVoltage' | 'series' | null;
}

/** A value that a calculation cannot work with. `input` names it; the message says what is wrong and what would be right. */
export class CalculationInputError extends Error {
  override readonly name = 'CalculationInputError';
  readonly input: string;
  readonly problem: string;

  constructor(input: string, problem: string) {
    super(`${input}: ${problem}`);
    this.input = input;
    this.problem = problem;
  }
}

/** A declared input, without its name. */
export type Spec = Omit<InputSpec, 'name'>;
interface Limits {
  readonly min: number;
  readonly max: number;
}
type Quantity = Spec & { readonly kind: 'quantity' };
type List = Spec & { readonly kind: 'list' };
type Left<S> = S & { readonly mayBeLeftOut: true };

const bare = { min: null, max: null, choices: null, optional: false, fromRegion: null } as const;

/** One number in a unit, between limits (inclusive). */
export const quantity = (label: string, unit: string, { min, max }: Limits): Quantity => ({
  ...bare,
  kind: 'quantity',
  label,
  unit,
  min,
  max,
});
/** Several numbers in a unit, each between limits. */
export const list = (label: string, unit: string, { min, max }: Limits): List => ({ ...bare, kind: 'list', label, unit, min, max });
/** One of several words. */
export const choice = <C extends string>(label: string, choices: readonly C[]): Spec & { kind: 'choice'; choices: readonly C[] } => ({
  ...bare,
  kind: 'choice',
  label,
  unit: null,
  choices,
});
/** The same input, which may be left out; the work then sees undefined. */
export const optional = <S extends Spec>(spec: S): Left<S> => ({ ...spec, optional: true, mayBeLeftOut: true });
/** The same input, which the region fills in when it is left out. */
export const fromRegion = <S extends Spec>(spec: S, field: 'supplyVoltage' | 'series'): S => ({
  ...spec,
  optional: true,
  fromRegion: field,
});

type Plain<S> = S extends { kind: 'quantity' }
  ? number
  : S extends { kind: 'list' }
    ? readonly number[]
    : S extends { kind: 'choice'; choices: readonly (infer C)[] }
      ? C
      : never;
/** The values a calculation's work sees. */
export type Given<I> = { readonly [K in keyof I]: Plain<I[K]> | (I[K] extends { mayBeLeftOut: true } ? undefined : never) };

/** Values for every declared input, or CalculationInputError for the first that does not fit. */
export function checkedInputs(
  specs: readonly InputSpec[],
  given: Readonly<Record<string, unknown>>,
  region: Region,
): Record<string, MathsValue | undefined> {
  const stranger = Object.keys(given).find((name) => !specs.some((spec) => spec.name === name));
  if (stranger !== undefined)
    throw new CalculationInputError(stranger, `there is no such input; there are ${specs.map((spec) => spec.name).join(', ')}`);
  return Object.fromEntries(
    specs.map((spec) => [spec.name, checkedInput(spec, Object.hasOwn(given, spec.name) ? given[spec.name] : undefined, region)]),
  );
}

function checkedInput(spec: InputSpec, value: unknown, region: Region): MathsValue | undefined {
  if (value === undefined) {
    if (spec.fromRegion === 'supplyVoltage') return region.supplyVoltage;
    if (spec.fromRegion === 'series') return region.protection.series;
    if (spec.optional) return undefined;
    throw new CalculationInputError(spec.name, `is missing; give ${wanted(spec)}`);
  }
  if (spec.kind === 'choice') {
    if (typeof value === 'string' && spec.choices?.includes(value) === true) return value;
    throw new CalculationInputError(spec.name, `give ${wanted(spec)}`);
  }
  if (spec.kind === 'quantity') return checkedNumber(spec, value);
  if (!Array.isArray(value) || value.length === 0 || value.length > 100) throw new CalculationInputError(spec.name, `give ${wanted(spec)}`);
  return value.map((one: unknown) => checkedNumber(spec, one));
}

function checkedNumber(spec: InputSpec, value: unknown): number {
  const [min, max] = [spec.min ?? -Infinity, spec.max ?? Infinity];
  if (typeof value !== 'number' || !Number.isFinite(value))
    throw new CalculationInputError(spec.name, `is not a number; give ${wanted(spec)}`);
  if (value < min || value > max)
    throw new CalculationInputError(spec.name, `${formatQuantity(value, spec.unit ?? '')} is out of range; give ${wanted(spec)}`);
  return value;
}

function wanted(spec: InputSpec): string {
  if (spec.kind === 'choice') return `one of: ${(spec.choices ?? []).join(', ')}`;
  const range = `from ${formatQuantity(spec.min ?? 0, spec.unit ?? '')} to ${formatQuantity(spec.max ?? 0, spec.unit ?? '')}`;
  return spec.kind === 'list' ? `1 to 100 numbers ${range}` : `a number ${range}`;
}
