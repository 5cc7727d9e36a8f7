import { RungwiseError } from '../errors.js';
import type { Region } from '../syllabus.js';
import type { CalculatorLink } from '../calculator-address.js';
import { calculatorLink } from './calculator.js';
import type { Key, TellTale } from './accept.js';
import type { CompiledFamily } from './compile.js';
import { figuresOf, type Figures } from './figures.js';
import { plain } from './numbers.js';
import { choiceOptions, type DrawOption } from './options.js';
import { filled } from './text.js';
import { withUnit } from './units.js';

/** A family worked for one set of inputs: everything a page, a paper or a marking needs, as plain data. */
export interface Worked {
  /** The calculation that does the same sum, with these numbers; null when there is none. */
  calculator: (CalculatorLink & { title: string }) | null;
  family: string;
  revision: number;
  region: Region;
  title: string;
  kind: 'number' | 'choice';
  stem: string;
  inputs: Record<string, { value: number; unit: string }>;
  key: Key;
  /** The answer as the examiner prints it, with its unit. */
  answerText: string;
  /** What is accepted, in words. */
  acceptText: string;
  /** Printed beside the box; null where the story names the precision itself. */
  hint: string | null;
  steps: string[];
  formula: { words: string; symbols: string };
  /** Formula in words and in symbols, then the steps. */
  working: string[];
  /** Usable in this draw, the most plausible first. */
  tellTales: TellTale[];
  /** For a choice, in the order of its list; null for a typed number. */
  options: DrawOption[] | null;
  /** Key of the caution to print. */
  caution: string;
}

const figureWords = ['', 'one figure or more', 'two figures or more', 'three figures or more'];

/** Puts figures into words. */
export function told(compiled: CompiledFamily, inputs: ReadonlyMap<string, number>, figures: Figures, story: number): Worked {
  const { variant } = compiled;
  const { answer, formula } = variant;
  const printed = plain(figures.key.shown);
  const print = (text: string): string => filled(text, figures.values, printed);
  const steps = variant.steps.map(print);
  const list = answer.options === undefined ? undefined : compiled.constants.get(answer.options);
  return {
    family: variant.id,
    revision: variant.revision,
    region: compiled.region,
    title: variant.title,
    kind: answer.kind,
    stem: print(variant.stories[story] ?? variant.stories[0] ?? ''),
    inputs: Object.fromEntries(compiled.inputs.map(({ name, unit }) => [name, { value: inputs.get(name) ?? NaN, unit }])),
    key: figures.key,
    answerText: withUnit(printed, answer.unit),
    acceptText: answer.acceptText,
    hint: answer.accept.sigFigs === 0 ? null : (figureWords[answer.accept.sigFigs] ?? `${answer.accept.sigFigs} figures or more`),
    steps,
    formula: { ...formula },
    working: [formula.words, formula.symbols, ...steps],
    tellTales: figures.tellTales,
    options: typeof list === 'object' ? choiceOptions(figures.key, figures.tellTales, list) : null,
    caution: variant.caution,
    calculator: compiled.calculator?.offered === true ? calculatorLink(compiled, figures.values) : null,
  };
}

/**
 * Works a family for inputs that are given, in their own units, with the story of that number (from 0), whether or not the family
 * would draw them. Throws RungwiseError when an input is missing.
 */
export function work(compiled: CompiledFamily, inputs: Readonly<Record<string, number>>, story = 0): Worked {
  const given = new Map(Object.entries(inputs));
  for (const { name } of compiled.inputs) {
    if (!given.has(name)) throw new RungwiseError('bad-input', `${compiled.variant.id}: the input ${name} is missing`);
  }
  return told(compiled, given, figuresOf(compiled, given), story);
}
