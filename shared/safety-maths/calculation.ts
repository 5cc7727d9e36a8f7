import { regions } from '../regions.js';
import type { Region, RegionId } from '../regions.js';
import { cautions } from './cautions.js';
import type { CautionKey } from './cautions.js';
import { checkedInputs } from './inputs.js';
import type { Given, InputSpec, MathsValue, Spec } from './inputs.js';
import { mathsSources } from './sources/index.js';
import type { MathsSource, MathsSourceKey } from './sources/index.js';

export interface OutputSpec {
  readonly name: string;
  /** null for a word or a yes or no. */
  readonly unit: string | null;
}

/** A published list of check values that a calculation answers to, by the list's own name for the function. */
export interface CheckName {
  readonly name: string;
  /** Inputs the list takes for granted. */
  readonly inputs?: Readonly<Record<string, number | string>>;
  /** Keys of the list that only describe. */
  readonly ignore?: readonly string[];
  /** Keys of the list, inputs and results alike, that go by another name here; the value is then in our own unit. */
  readonly keys?: Readonly<Record<string, string>>;
}

export interface Valued {
  readonly value: MathsValue;
  readonly unit: string | null;
}
export interface Outcome {
  readonly region: RegionId;
  /** Every input used, those the region filled in included. */
  readonly inputs: Readonly<Record<string, Valued>>;
  readonly result: Readonly<Record<string, Valued>>;
  /** The formula in words and symbols, the numbers put in, the result; one step a line. */
  readonly working: readonly string[];
}

export interface Calculation {
  readonly id: string;
  readonly title: string;
  readonly topic: string;
  readonly formula: string;
  readonly inputs: readonly InputSpec[];
  readonly outputs: readonly OutputSpec[];
  readonly source: readonly MathsSource[];
  /** Where it holds and where it stops holding, in one sentence; null where the inputs' limits say it all. */
  readonly validity: string | null;
  /** The rule it follows, where published rules differ; null where there is only one. */
  readonly rule: string | null;
  /** Plain words a person would look for it by; empty for a mere figure, which needs no page of its own. */
  readonly foundBy: readonly string[];
  /** How the answer depends on the region; null if it does not. */
  readonly regionDependence: string | null;
  readonly caution: string;
  readonly cautionKey: CautionKey;
  readonly checks: readonly CheckName[];
  /** Runs it on plain values in the inputs' own units; throws CalculationInputError, which names the input. */
  run(inputs: Readonly<Record<string, unknown>>, region?: RegionId): Outcome;
}

export interface Definition<I extends Readonly<Record<string, Spec>>, O extends Readonly<Record<string, string | null>>> {
  readonly id: string;
  readonly title: string;
  readonly topic: string;
  readonly formula: string;
  readonly inputs: I;
  readonly outputs: O;
  readonly sources: readonly MathsSourceKey[];
  readonly validity?: string;
  readonly rule?: string;
  readonly foundBy?: readonly string[];
  readonly regionDependence?: string;
  readonly caution: CautionKey;
  readonly checks: readonly (CheckName | string)[];
  work(inputs: Given<I>, region: Region): { result: { readonly [K in keyof O]: MathsValue }; steps: readonly string[] };
}

/** Makes a calculation out of its description: `run` checks every input before the work sees it. */
export function calculation<I extends Readonly<Record<string, Spec>>, O extends Readonly<Record<string, string | null>>>(
  definition: Definition<I, O>,
): Calculation {
  const inputs = Object.entries(definition.inputs).map(([name, spec]) => named(name, spec));
  const outputs = Object.entries(definition.outputs).map(([name, unit]) => ({ name, unit }));
  return {
    id: definition.id,
    title: definition.title,
    topic: definition.topic,
    formula: definition.formula,
    inputs,
    outputs,
    source: definition.sources.map((key) => mathsSources[key]),
    validity: definition.validity ?? null,
    rule: definition.rule ?? null,
    foundBy: definition.foundBy ?? [],
    regionDependence: definition.regionDependence ?? null,
    caution: cautions[definition.caution],
    cautionKey: definition.caution,
    checks: definition.checks.map((check) => (typeof check === 'string' ? { name: check } : check)),
    run(given, regionId = 'uk') {
      const region = regions[regionId];
      const values = checkedInputs(inputs, given, region);
      const { result, steps } = definition.work(values as Given<I>, region);
      return { region: region.id, inputs: valued(inputs, values), result: valued(outputs, result), working: steps };
    },
  };
}

/** The declaration of one input, with its name and without what only types need. */
function named(name: string, spec: Spec): InputSpec {
  const { label, kind, unit, min, max, choices, optional, fromRegion } = spec;
  return { name, label, kind, unit, min, max, choices, optional, fromRegion };
}

function valued(specs: readonly OutputSpec[], values: Readonly<Record<string, MathsValue | undefined>>): Record<string, Valued> {
  const known = specs.filter(({ name }) => values[name] !== undefined);
  return Object.fromEntries(known.map(({ name, unit }) => [name, { value: values[name] ?? null, unit }]));
}
