import type { Calculation, Valued } from '../../../shared/safety-maths/calculation.js';
import { findCalculation } from '../../../shared/safety-maths/index.js';
import { CalculationInputError } from '../../../shared/safety-maths/inputs.js';
import { convert, findUnit } from '../../../shared/numeric-answer/units.js';
import type { CalculatorLink } from '../calculator-address.js';
import type { Region } from '../syllabus.js';
import { evaluate, type Values } from './evaluate.js';
import type { Expression } from './expression.js';
import { tidy } from './numbers.js';
import type { Report, Variant } from './variant.js';

/**
 * The calculation that does the same sum as a family: its page is where a candidate goes on from the working, and its result is what the
 * family's answer is held against when a pack is checked. The two are written apart, so a missing factor in either shows.
 */
export interface CompiledCalculator {
  calculation: Calculation;
  /** Formulas for the calculation's inputs, in its own units: one, several for a list, or the name of a constant that is a list. */
  inputs: { name: string; from: Expression | Expression[] | string }[];
  choices: Readonly<Record<string, string>>;
  output: string;
  /** Whether the page of the calculation is offered with a draw's numbers. */
  offered: boolean;
}

interface WithCalculator {
  calculator: CompiledCalculator | null;
  region: Region;
  variant: Variant;
}

type Read = (text: string, path: (string | number)[]) => Expression;

/** Reads what a family says of its calculation; null when it names none. Whatever is wrong goes to the report. */
export function compileCalculator(variant: Variant, lists: ReadonlySet<string>, read: Read, report: Report): CompiledCalculator | null {
  const named = variant.calculator;
  if (named === undefined) return null;
  const calculation = findCalculation(named.id);
  if (calculation === undefined) {
    report(['calculator', 'id'], `there is no calculation ${named.id}`);
    return null;
  }
  if (calculation.source.every(({ basis }) => basis === 'memory'))
    report(['calculator', 'id'], `${named.id} is known from memory only, and no question may hang on that`);
  if (calculation.foundBy.length === 0) report(['calculator', 'id'], `${named.id} is a mere figure and has no page`);
  const output = named.output ?? calculation.outputs[0]?.name ?? '';
  if (!calculation.outputs.some(({ name }) => name === output))
    report(['calculator', 'output'], `${named.id} gives no ${output}; it gives ${calculation.outputs.map(({ name }) => name).join(', ')}`);
  checkInputNames(calculation, { ...named.inputs, ...named.choices }, report);
  const inputs = Object.entries(named.inputs).map(([name, text]) => {
    const path = ['calculator', 'inputs', name];
    if (typeof text !== 'string') return { name, from: text.map((one, i) => read(one, [...path, i])) };
    return { name, from: lists.has(text) ? text : read(text, path) };
  });
  return { calculation, inputs, choices: named.choices ?? {}, output, offered: named.offered ?? true };
}

function checkInputNames(calculation: Calculation, given: Readonly<Record<string, unknown>>, report: Report): void {
  for (const name of Object.keys(given)) {
    if (!calculation.inputs.some((input) => input.name === name))
      report(
        ['calculator', 'inputs', name],
        `${calculation.id} takes no ${name}; it takes ${calculation.inputs.map((i) => i.name).join(', ')}`,
      );
  }
  for (const { name, optional } of calculation.inputs)
    if (!optional && !Object.hasOwn(given, name)) report(['calculator', 'inputs'], `${calculation.id} also needs ${name}`);
}

/** The calculation with a draw's numbers put in. */
export function calculatorLink(
  { calculator, region }: Pick<WithCalculator, 'calculator' | 'region'>,
  values: Values,
): (CalculatorLink & { title: string }) | null {
  if (calculator === null) return null;
  const work = (expression: Expression): number => tidy(evaluate(expression, values, region));
  const inputs: Record<string, string | number | readonly number[]> = { ...calculator.choices };
  for (const { name, from } of calculator.inputs) {
    if (typeof from === 'string') inputs[name] = values.get(from) ?? [];
    else inputs[name] = Array.isArray(from) ? from.map(work) : work(from);
  }
  return { id: calculator.calculation.id, title: calculator.calculation.title, inputs };
}

/** Why a family's exact answer is not what its calculation gives for the same numbers; null when they agree to one part in a thousand million. */
export function disagreement(compiled: WithCalculator, values: Values, exact: number): string | null {
  const link = calculatorLink(compiled, values);
  if (link === null || compiled.calculator === null) return null;
  const { calculation, output } = compiled.calculator;
  const given = JSON.stringify(link.inputs);
  try {
    const got = inUnit(calculation.run(link.inputs, compiled.region).result[output], compiled.variant.answer.unit);
    if (typeof got === 'number' && Math.abs(got - exact) <= 1e-9 * Math.abs(exact)) return null;
    return `${link.id} gives ${String(got)} for ${given} where the family's answer is ${exact}`;
  } catch (error) {
    if (!(error instanceof CalculationInputError)) throw error;
    return `${link.id} refuses ${given}: ${error.message}`;
  }
}

function inUnit(valued: Valued | undefined, wanted: string): unknown {
  const [from, to] = [valued?.unit === undefined || valued.unit === null ? null : findUnit(valued.unit), findUnit(wanted)];
  if (typeof valued?.value !== 'number' || from === null || to === null || from.quantity !== to.quantity) return valued?.value ?? null;
  return convert(valued.value, from, to);
}
