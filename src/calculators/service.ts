import { requirePermission, type Person } from '../accounts/index.js';
import { searchCalculations } from '../core/calculator-search.js';
import { RungwiseError } from '../core/errors.js';
import { draw, fourOptions, type CompiledFamily, type Draw } from '../core/families/draw.js';
import { drawOptions, markNumber, markOption, type Mark, type ShownOption } from '../core/marking.js';
import type { Region } from '../core/syllabus.js';
import type { BankQuestion, FamilyEntry, QuestionsService } from '../questions/index.js';
import { readQuantity } from '../../shared/numeric-answer/parse.js';
import type { Calculation, Outcome } from '../../shared/safety-maths/calculation.js';
import { calculations, findCalculation } from '../../shared/safety-maths/index.js';
import { CalculationInputError, type InputSpec } from '../../shared/safety-maths/inputs.js';
import { readTyped } from '../../shared/safety-maths/typed-inputs.js';
import type { TryQuery } from './forms.js';

/** Calculators, and numbers to try. Nothing here is recorded. */

export type Typed = Readonly<Record<string, readonly string[]>>;

export interface Worked {
  calculation: Calculation;
  region: Region;
  typed: Typed;
  /** Inputs that do not fit, by name. */
  faults: ReadonlyMap<string, string>;
  /** Needed and not typed. */
  missing: InputSpec[];
  /** Null until every input is there and fits. */
  outcome: Outcome | null;
  families: FamilyEntry[];
}

export interface Tried {
  calculation: Calculation;
  family: FamilyEntry;
  bank: BankQuestion;
  compiled: CompiledFamily;
  draw: Draw;
  region: Region;
  form: 'typed' | 'options';
  /** Whether this draw can be asked in the other form. */
  canBeOptions: boolean;
  options: ShownOption[] | null;
  given: string | null;
  /** Null until something was given that could be marked. */
  mark: Mark | null;
  why: string | null;
}

export type CalculatorsService = ReturnType<typeof calculatorsService>;

export function calculatorsService({ questions }: { questions: QuestionsService }) {
  async function known(id: string): Promise<{ calculation: Calculation; families: FamilyEntry[] }> {
    const calculation = findCalculation(id);
    if (calculation === undefined || calculation.foundBy.length === 0) throw new RungwiseError('not-found');
    return { calculation, families: (await questions.families()).filter((family) => family.calculator === id) };
  }

  return {
    list(person: Person | null, asked: string): Calculation[] {
      requirePermission(person, 'calculate');
      return searchCalculations(calculations, asked);
    },

    async work(person: Person | null, id: string, typed: Typed, region: Region | null): Promise<Worked> {
      requirePermission(person, 'calculate');
      const { calculation, families } = await known(id);
      const where = region ?? person?.region ?? 'uk';
      const offered = families.filter((family) => family.regions.includes(where));
      return { calculation, region: where, typed, families: offered, ...worked(calculation, typed, where) };
    },

    async tryOut(person: Person | null, id: string, code: string, query: TryQuery & { seed: number }): Promise<Tried> {
      requirePermission(person, 'calculate');
      const { calculation, families } = await known(id);
      const family = families.find((each) => each.code === code);
      const bank = family === undefined ? null : await questions.get(family.questionId, family.revision);
      if (family === undefined || bank === null || bank.item.kind !== 'numeric') throw new RungwiseError('not-found');
      const region = query.region ?? person?.region ?? 'uk';
      const compiled = bank.item.compiled(region);
      if (compiled === null) throw new RungwiseError('not-found');
      return { calculation, family, bank, compiled, region, ...tried(draw(compiled, query.seed), query) };
    },
  };
}

function worked(calculation: Calculation, typed: Typed, region: Region): Pick<Worked, 'faults' | 'missing' | 'outcome'> {
  const faults = new Map<string, string>();
  const values: Record<string, unknown> = {};
  const missing: InputSpec[] = [];
  for (const spec of calculation.inputs) {
    try {
      const value = readTyped(spec, typed[spec.name] ?? []);
      if (value !== undefined) values[spec.name] = value;
      else if (!spec.optional) missing.push(spec);
    } catch (error) {
      if (!(error instanceof CalculationInputError)) throw error;
      faults.set(spec.name, error.problem);
    }
  }
  if (faults.size > 0 || missing.length > 0) return { faults, missing, outcome: null };
  try {
    return { faults, missing, outcome: calculation.run(values, region) };
  } catch (error) {
    if (!(error instanceof CalculationInputError)) throw error;
    faults.set(error.input, error.problem);
    return { faults, missing, outcome: null };
  }
}

function tried(drawn: Draw, query: TryQuery): Pick<Tried, 'draw' | 'form' | 'canBeOptions' | 'options' | 'given' | 'mark' | 'why'> {
  const four = drawOptions(drawn, drawn.options ?? fourOptions(drawn));
  const form = four !== null && (query.form === 'options' || drawn.options !== null) ? 'options' : 'typed';
  const base = { draw: drawn, form, canBeOptions: four !== null } as const;
  if (form === 'options' && four !== null) {
    const mark = query.option === null ? null : markOption(four, query.option, drawn);
    const why = query.option !== null && mark === null ? 'Choose one of the answers.' : null;
    return { ...base, options: four, given: mark === null ? null : query.option, mark, why };
  }
  if (query.value === null) return { ...base, options: null, given: null, mark: null, why: null };
  const reading = readQuantity(query.value, drawn.key.unit);
  if (!reading.understood) return { ...base, options: null, given: query.value, mark: null, why: reading.message };
  return { ...base, options: null, given: query.value, mark: markNumber(drawn, reading.value), why: null };
}
