import { z } from 'zod';
import { daySchema, revisionSchema } from '../questions/fields.js';
import { excusesSchema, basisSchema, keySchema, objectiveCodeSchema } from '../syllabus.js';

/**
 * A family: a numeric question whose numbers are fresh each time. Families are data in packs, so a club can write one;
 * here is their shape only. That expressions parse, names exist and every region can be drawn is said by check.ts.
 * Every text, list and number has a bound, so that no pack can cost more than a known amount of time or memory.
 */

const text = (max: number) => z.string().trim().min(1).max(max);
/** Bounded well inside what double precision holds exactly to six figures after any of our functions. */
const figure = z.number().min(-1e12).max(1e12);

/** Inputs, constants and derived values start with a capital letter; functions and `pi` with a small one, so they never meet. */
export const symbolSchema = z
  .string()
  .regex(/^[A-Z][A-Za-z0-9]{0,11}$/, 'a capital letter, then up to eleven letters or digits, such as P or RO');
const unitSchema = z.string().trim().max(16);
const expressionSchema = text(500);

function bySymbol<T extends z.ZodType>(value: T, max: number) {
  return z.record(symbolSchema, value).refine((record) => Object.keys(record).length <= max, `at most ${max} entries`);
}

/** The most positions an input's grid may have. */
const gridLimit = 100_000;

const rangeSchema = z
  .strictObject({ label: text(80), unit: unitSchema, min: figure, max: figure, step: figure })
  .superRefine((range, context) => {
    if (range.step <= 0) context.addIssue({ code: 'custom', path: ['step'], message: 'the step must be above zero' });
    else if (range.max < range.min) context.addIssue({ code: 'custom', path: ['max'], message: 'the largest value is below the smallest' });
    else if ((range.max - range.min) / range.step > gridLimit) {
      context.addIssue({ code: 'custom', path: ['step'], message: `more than ${gridLimit} steps from min to max` });
    }
  });
const choicesSchema = z.strictObject({ label: text(80), unit: unitSchema, choices: z.array(figure).min(1).max(60) });
const inputSchema = z.union([rangeSchema, choicesSchema]);

const constantSchema = z.strictObject({
  value: z.union([figure, z.array(figure).min(1).max(40)]),
  unit: unitSchema,
  /** The source that gives the figure; left out when it is a convention of the family's own. */
  source: keySchema.optional(),
  note: text(300).optional(),
  basis: basisSchema,
});

/** How the examiner prints the answer: `dp` decimals or `sf` significant figures, one of the two. */
const roundSchema = z
  .strictObject({
    mode: z.enum(['nearest', 'up', 'down']),
    dp: z.number().int().min(0).max(9).optional(),
    sf: z.number().int().min(1).max(9).optional(),
  })
  .refine(
    (round) => (round.dp === undefined) !== (round.sf === undefined),
    'give dp (decimals) or sf (significant figures), one of the two',
  );

/** The window around the exact answer, relative and absolute; `sigFigs` 0 means that rounding earns nothing more. */
const acceptSchema = z.strictObject({
  belowRel: z.number().min(0).max(0.5),
  aboveRel: z.number().min(0).max(0.5),
  belowAbs: z.number().min(0).max(1e6),
  aboveAbs: z.number().min(0).max(1e6),
  sigFigs: z.number().int().min(0).max(6),
});

const answerShape = {
  symbol: symbolSchema,
  unit: unitSchema,
  expr: expressionSchema,
  kind: z.enum(['number', 'choice']),
  /** For a choice: the constant that holds the printed list. */
  options: symbolSchema.optional(),
  round: roundSchema,
  accept: acceptSchema,
  acceptText: text(300),
};

const formulaShape = { words: text(300), symbols: text(120) };

/** What acting on the mistake would do: expose somebody to harm, err on the cautious side in every draw, or neither. */
export const directionSchema = z.enum(['unsafe', 'safe-side', 'wrong']);

const tellTaleSchema = z.strictObject({
  name: keySchema,
  label: text(160),
  expr: expressionSchema,
  direction: directionSchema,
  tell: text(300),
});

const calculationNameSchema = z.string().regex(/^[a-z][a-z0-9_]{0,40}$/, 'small letters, digits and _');
/** The calculation that does the same sum: formulas for its inputs, in its own units; words for its choices; the result that is the answer. */
const calculatorSchema = z.strictObject({
  id: keySchema,
  inputs: z
    .record(calculationNameSchema, z.union([expressionSchema, z.array(expressionSchema).min(1).max(12)]))
    .refine((record) => Object.keys(record).length <= 12, 'at most 12 entries'),
  choices: z.record(calculationNameSchema, text(60)).optional(),
  output: calculationNameSchema.optional(),
  /** False where the numbers put in are not the question's own, so that its page would puzzle whoever goes on from the working. */
  offered: z.literal(false).optional(),
});

const storiesSchema = z.array(text(600)).min(1).max(8);
const stepsSchema = z.array(text(400)).min(1).max(8);
const constraintsSchema = z.array(expressionSchema).max(8);
const tellTalesSchema = z.array(tellTaleSchema).max(16);
const mayCoincideSchema = z.array(keySchema).max(16);
const minWrongSchema = z.number().int().min(0).max(8);
const inputsSchema = bySymbol(inputSchema, 8);
const constantsSchema = bySymbol(constantSchema, 12);
const derivedSchema = bySymbol(expressionSchema, 12);

/** Inputs, constants, derived, answer and formula merge by name over the base; the rest replace what the base has. */
const overrideSchema = z.strictObject({
  stories: storiesSchema.optional(),
  inputs: inputsSchema.optional(),
  constants: constantsSchema.optional(),
  derived: derivedSchema.optional(),
  constraints: constraintsSchema.optional(),
  answer: z.strictObject(answerShape).partial().optional(),
  formula: z.strictObject(formulaShape).partial().optional(),
  steps: stepsSchema.optional(),
  tellTales: tellTalesSchema.optional(),
  minWrong: minWrongSchema.optional(),
  mayCoincide: mayCoincideSchema.optional(),
  caution: keySchema.optional(),
  calculator: calculatorSchema.optional(),
});

const variantSchema = z.strictObject({ available: z.boolean(), note: text(400).optional(), override: overrideSchema.optional() });

export const familySchema = z.strictObject({
  id: keySchema,
  revision: revisionSchema,
  /** As in fixed questions: the first revision that asked the same. */
  sameSince: revisionSchema.optional(),
  title: text(80),
  objectives: z.array(objectiveCodeSchema).min(1).max(6),
  /** What is asked for, in one phrase that an editor can look at beside the stories. */
  asks: text(240),
  stories: storiesSchema,
  inputs: inputsSchema,
  constants: constantsSchema.default({}),
  derived: derivedSchema.default({}),
  constraints: constraintsSchema.default([]),
  answer: z.strictObject(answerShape),
  formula: z.strictObject(formulaShape),
  steps: stepsSchema,
  /** In order of preference: the most plausible first. */
  tellTales: tellTalesSchema,
  /** A draw with fewer usable tell-tales than this is drawn again. */
  minWrong: minWrongSchema,
  /** Tell-tales that drop out of some draws. */
  mayCoincide: mayCoincideSchema.default([]),
  caution: keySchema,
  calculator: calculatorSchema.optional(),
  sources: z.array(keySchema).min(1).max(8),
  checked: daySchema,
  excuses: excusesSchema.optional(),
  regions: z.strictObject({ uk: variantSchema, eu: variantSchema, na: variantSchema }),
});

export type Family = z.infer<typeof familySchema>;
export type FamilyInput = z.infer<typeof inputSchema>;
export type Rounding = z.infer<typeof roundSchema>;
export type Acceptance = z.infer<typeof acceptSchema>;
export type Direction = z.infer<typeof directionSchema>;
