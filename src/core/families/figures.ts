import { isApart, keyOf, type Key, type TellTale } from './accept.js';
import type { CompiledFamily } from './compile.js';
import { evaluate, holds } from './evaluate.js';
import type { Value } from './functions.js';
import { tidy } from './numbers.js';

/** All that is worked from one set of inputs. */
export interface Figures {
  /** Inputs, constants, derived values and, under its own symbol, the exact answer. */
  values: ReadonlyMap<string, Value>;
  key: Key;
  /** Those that may be used with these inputs. */
  tellTales: TellTale[];
}

function valuesOf(compiled: CompiledFamily, inputs: ReadonlyMap<string, number>): Map<string, Value> {
  const values = new Map<string, Value>([...compiled.constants, ...inputs]);
  for (const { name, expression } of compiled.derived) values.set(name, evaluate(expression, values, compiled.region));
  return values;
}

function figuresFrom(compiled: CompiledFamily, values: Map<string, Value>, exact: number): Figures {
  const { answer, constants } = compiled.variant;
  const key = keyOf(exact, answer.unit, answer.round, answer.accept);
  const listed = answer.options === undefined ? null : constants[answer.options]?.value;
  const tellTales: TellTale[] = [];
  // A loop with the fields named: this runs for every draw, and copying objects by their rest took half of its time.
  for (const { name, label, tell, direction, expression } of compiled.tellTales) {
    const value = tidy(evaluate(expression, values, compiled.region));
    if (Array.isArray(listed) && !listed.includes(value)) continue;
    if (isApart(key, value)) tellTales.push({ name, label, tell, direction, value, unit: answer.unit });
  }
  values.set(answer.symbol, key.value);
  return { values, key, tellTales };
}

/** Works a family for given inputs, whether or not they meet its constraints. Inputs are in their own units. */
export function figuresOf(compiled: CompiledFamily, inputs: ReadonlyMap<string, number>): Figures {
  const values = valuesOf(compiled, inputs);
  return figuresFrom(compiled, values, tidy(evaluate(compiled.answer, values, compiled.region)));
}

/** The figures when these inputs make a fair question: constraints met, a positive finite answer, enough usable tell-tales. */
export function fairFigures(compiled: CompiledFamily, inputs: ReadonlyMap<string, number>): Figures | null {
  const values = valuesOf(compiled, inputs);
  if (!compiled.constraints.every((constraint) => holds(constraint, values, compiled.region))) return null;
  const exact = tidy(evaluate(compiled.answer, values, compiled.region));
  if (!Number.isFinite(exact) || exact <= 0) return null;
  const figures = figuresFrom(compiled, values, exact);
  return figures.tellTales.length >= compiled.variant.minWrong ? figures : null;
}
