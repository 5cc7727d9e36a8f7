import { describeReading } from '../numeric-answer/describe.js';
import { readQuantity } from '../numeric-answer/parse.js';
import { CalculationInputError } from './inputs.js';
import type { InputSpec } from './inputs.js';

/**
 * Reads what a person typed for an input of a calculation: "2.2 kW" for a quantity in W, one text a number for a list (several may stand
 * in one text, parted by semicolons), the words of a choice in any capitals.
 * @param texts as typed; blank ones count as not typed
 * @returns a value for `run`, or undefined when nothing was typed
 * @throws CalculationInputError that names the input and says what to type
 */
export function readTyped(spec: InputSpec, texts: readonly string[]): unknown {
  const typed = texts.flatMap((text) => (spec.kind === 'list' ? text.split(/[;+]/) : [text])).filter((text) => text.trim() !== '');
  const [first] = typed;
  if (first === undefined) return undefined;
  if (spec.kind === 'choice') return spec.choices?.find((choice) => choice.toLowerCase() === first.trim().toLowerCase()) ?? first;
  if (spec.kind === 'list') return typed.slice(0, 101).map((text) => readNumber(spec, text));
  return readNumber(spec, first);
}

function readNumber(spec: InputSpec, text: string): number {
  const reading = readQuantity(text, spec.unit ?? '');
  if (!reading.understood) throw new CalculationInputError(spec.name, describeReading(reading));
  return reading.value;
}
