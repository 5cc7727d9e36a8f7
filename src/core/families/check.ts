import { acceptNumber } from './accept.js';
import { compileVariant, type CompiledFamily } from './compile.js';
import type { Value } from './functions.js';
import { plain } from './numbers.js';
import { disagreement } from './calculator.js';
import { checkDimensions } from './dimensions.js';
import { sample, type Sample } from './sample.js';
import type { Family } from './schema.js';
import { regionIds } from '../syllabus.js';
import { placeholdersIn } from './text.js';
import { namesUnit } from './units.js';
import { variantOf, writtenAt, type Path, type Variant, type Report } from './variant.js';

export interface FamilyFault {
  /** Keys and positions from the family's own mapping, as in its file. */
  path: Path;
  message: string;
}

/** Seeds drawn in every region. */
const seedsTried = 200;
/**
 * What the draws of one region may cost in all, in nodes of formulas worked, so that a check is bounded in time without a clock: about
 * 50 ms. A try costs about as much as `tryCost` nodes besides its formulas, and each tell-tale `tellTaleCost` for holding it apart.
 */
const costLimit = 3_000_000;
const tryCost = 200;
const tellTaleCost = 60;

/**
 * Everything that can be said of a family without a person: each formula reads, each name is known, each placeholder has a number, stories
 * print every input and the unit asked for, and 200 seeds draw in every region it is offered in, with finite figures and enough tell-tales.
 * Never throws; bounded in time whatever the family says. Empty when nothing is wrong.
 */
export function checkFamily(family: Family): FamilyFault[] {
  const faults = new Map<string, FamilyFault>();
  let offered = 0;
  for (const region of regionIds) {
    const variant = variantOf(family, region);
    if (variant === null) continue;
    offered += 1;
    const report: Report = (path, message) => {
      const fault = { path: writtenAt(family, region, path), message };
      faults.set(JSON.stringify(fault), fault);
    };
    checkTexts(variant, report);
    checkTellTaleNames(variant, report);
    checkFigures(variant, report);
    const compiled = compileVariant(variant, report);
    if (compiled === null) continue;
    checkDimensions(compiled, report);
    checkDraws(compiled, report);
  }
  if (offered === 0) faults.set('', { path: ['regions'], message: 'the family is offered in no region' });
  return [...faults.values()];
}

function checkTexts(variant: Variant, report: Report): void {
  const numbers = new Set([...Object.keys(variant.inputs), ...Object.keys(variant.derived), variant.answer.symbol]);
  for (const [name, { value }] of Object.entries(variant.constants)) if (typeof value === 'number') numbers.add(name);
  const texts: [Path, string][] = [
    ...variant.stories.map((text, i): [Path, string] => [['stories', i], text]),
    ...variant.steps.map((text, i): [Path, string] => [['steps', i], text]),
  ];
  for (const [path, text] of texts) {
    const { placeholders, strayBrace } = placeholdersIn(text);
    if (strayBrace) report(path, 'a brace belongs to no placeholder; placeholders are written {P}, {P|2} or {answer}');
    for (const { raw, name } of placeholders) {
      if (name !== 'answer' && !numbers.has(name)) report(path, `${raw} prints nothing: no number is called ${name}`);
    }
  }
  variant.stories.forEach((story, i) => checkStory(variant, story, ['stories', i], report));
}

/** A story must hold all that is needed to answer it, and must not hold the answer. */
function checkStory(variant: Variant, story: string, path: Path, report: Report): void {
  const printed = new Set(placeholdersIn(story).placeholders.map(({ name }) => name));
  for (const name of Object.keys(variant.inputs)) if (!printed.has(name)) report(path, `the story does not print the input {${name}}`);
  for (const name of ['answer', variant.answer.symbol]) if (printed.has(name)) report(path, `the story prints the answer {${name}}`);
  if (variant.answer.kind === 'number' && !namesUnit(story, variant.answer.unit))
    report(path, `the story does not name the unit of the answer, ${variant.answer.unit}`);
}

function checkTellTaleNames(variant: Variant, report: Report): void {
  const names = variant.tellTales.map(({ name }) => name);
  names.forEach((name, i) => names.indexOf(name) < i && report(['tellTales', i, 'name'], `two tell-tales are called ${name}`));
  variant.mayCoincide.forEach((name, i) => names.includes(name) || report(['mayCoincide', i], `no tell-tale is called ${name}`));
  if (variant.minWrong > names.length)
    report(['minWrong'], `${variant.minWrong} usable tell-tales are asked for, and there are ${names.length}`);
}

function checkFigures(variant: Variant, report: Report): void {
  for (const [name, { basis }] of Object.entries(variant.constants)) {
    if (basis === 'memory')
      report(
        ['constants', name],
        'the figure is from memory: no answer may hang on it until a source is read, so set available to false here',
      );
  }
  const { kind, options } = variant.answer;
  const list = options === undefined ? undefined : variant.constants[options]?.value;
  if (kind === 'choice' && !Array.isArray(list)) report(['answer', 'options'], 'a choice needs the name of a constant that holds its list');
  if (kind === 'number' && options !== undefined) report(['answer', 'options'], 'only a choice has options');
  if (kind === 'choice' && Array.isArray(list) && new Set(list).size < 2)
    report(['answer', 'options'], 'the list holds fewer than two different values');
}

function checkDraws(compiled: CompiledFamily, report: Report): void {
  let budget = Math.floor(costLimit / (compiled.cost + tryCost + tellTaleCost * compiled.tellTales.length));
  const sides = new Map<string, Set<boolean>>();
  let differs: string | null = null;
  for (let seed = 1; seed <= seedsTried; seed += 1) {
    const found = sample(compiled, `check ${seed}`, budget);
    if (found === null) {
      report(
        ['constraints'],
        `in ${compiled.region} too few sets of numbers make a question (constraints met, an answer above zero, ${compiled.variant.minWrong} usable tell-tales): ${seed - 1} found; widen the inputs, relax the constraints or shorten the formulas`,
      );
      return;
    }
    budget -= found.tries;
    checkSample(compiled, found, report);
    differs ??= disagreement(compiled, found.figures.values, found.figures.key.value);
    for (const { name, value } of found.figures.tellTales)
      sides.set(name, (sides.get(name) ?? new Set()).add(value > found.figures.key.value));
  }
  if (differs !== null) report(['calculator'], differs);
  compiled.tellTales.forEach(({ name, direction }, i) => {
    const seen = sides.get(name)?.size ?? 0;
    if (seen === 0) report(['tellTales', i], `${name} was usable in none of ${seedsTried} draws`);
    if (direction === 'safe-side' && seen > 1)
      report(['tellTales', i, 'direction'], `${name} is called safe-side, but is now above and now below the answer`);
  });
}

function checkSample(compiled: CompiledFamily, { inputs, figures }: Sample, report: Report): void {
  const { variant } = compiled;
  for (const [name, value] of inputs) {
    if (Number(plain(value)) !== value) report(['inputs', name], 'some of its values do not print in full: four decimals at most');
  }
  for (const name of Object.keys(variant.derived)) {
    if (!Number.isFinite(figures.values.get(name) as Value)) report(['derived', name], `${name} is not a finite number for some draws`);
  }
  const list = variant.answer.options === undefined ? null : variant.constants[variant.answer.options]?.value;
  if (Array.isArray(list) && !list.includes(figures.key.value)) report(['answer', 'expr'], 'some answers are not in the printed list');
  if (!acceptNumber(figures, figures.key.shown)) report(['answer', 'round'], 'some answers, printed so, lie outside their own window');
  const usable = new Set(figures.tellTales.map(({ name }) => name));
  compiled.tellTales.forEach(({ name }, i) => {
    if (!usable.has(name) && !variant.mayCoincide.includes(name))
      report(['tellTales', i], `${name} drops out of some draws: name it under mayCoincide, or change it`);
  });
}
