import { topicTitle } from '../core/calculator-search.js';
import { formulaLine, formulaOf } from '../core/formula-line.js';
import { unitSpoken } from '../core/families/draw.js';
import type { CautionPart, TitleField } from '../core/page-parts.js';
import { formatQuantity } from '../../shared/format.js';
import { findUnit } from '../../shared/numeric-answer/units.js';
import { regions } from '../../shared/regions.js';
import type { Calculation, Outcome, Valued } from '../../shared/safety-maths/calculation.js';
import type { InputSpec } from '../../shared/safety-maths/inputs.js';
import { drawingFor } from './drawings.js';
import { outputWords } from './output-words.js';
import type { CalculatorEntry, CalculatorListPage, CalculatorPage, InputField } from './page-types.js';
import type { Worked } from './service.js';

/** From what the calculators say to what a page shows. */

export const field = (label: string, value: string, width: TitleField['width'], more: Partial<TitleField> = {}): TitleField => ({
  label,
  value,
  width,
  name: false,
  id: false,
  href: null,
  ...more,
});

/** The few that were found show their formulas; the whole list is read by its titles. */
const entry =
  (withFormula: boolean) =>
  ({ id, title, formula }: Calculation): CalculatorEntry => ({
    href: `/calculators/${id}`,
    title,
    formula: withFormula ? (formulaOf(formula) ?? []) : [],
  });

export function calculatorListPage(found: readonly Calculation[], asked: string): CalculatorListPage {
  const titles = [...new Set(found.map(({ topic }) => topicTitle(topic)))];
  const searched = asked.trim() !== '';
  const topics = searched
    ? [{ id: null, title: 'What fits best', entries: found.slice(0, 12).map(entry(true)) }]
    : titles.map((title, i) => ({
        id: `topic-${i + 1}`,
        title,
        entries: found.filter(({ topic }) => topicTitle(topic) === title).map(entry(false)),
      }));
  const many = found.length === 1 ? 'One calculator fits' : `${Math.min(found.length, 12)} calculators fit`;
  return {
    view: 'calculators/list',
    data: {
      asked,
      found: searched
        ? found.length === 0
          ? `No calculator fits “${asked.slice(0, 60)}”. Try one plain word, such as fuse, ladder or battery.`
          : `${many} “${asked.slice(0, 60)}”.`
        : null,
      contents: searched ? null : topics.flatMap(({ id, title }) => (id === null ? [] : [{ href: `#${id}`, title }])),
      topics: topics.filter(({ entries }) => entries.length > 0),
      titleBlock: [field('Calculators', 'Safety maths', 8, { name: true }), field('Kept', 'Nothing you type here', 4)],
    },
  };
}

export function calculatorPage(worked: Worked): CalculatorPage {
  const { calculation, region } = worked;
  const granted = (spec: InputSpec): boolean => spec.fromRegion !== null;
  const fields = calculation.inputs.map((spec) => ({ spec, shown: inputField(spec, worked) }));
  const more = fields.filter(({ spec }) => granted(spec));
  const usesRegion = calculation.regionDependence !== null || more.length > 0;
  return {
    view: 'calculators/calculator',
    data: {
      title: calculation.title,
      topicTitle: topicTitle(calculation.topic),
      action: `/calculators/${calculation.id}`,
      rule: calculation.rule,
      inputs: fields.filter(({ spec }) => !granted(spec)).map(({ shown }) => shown),
      more: more.length === 0 ? null : { open: more.some(({ spec }) => isTouched(spec, worked)), inputs: more.map(({ shown }) => shown) },
      regions: usesRegion ? Object.values(regions).map(({ id, title }) => ({ value: id, label: title, chosen: id === region })) : null,
      region,
      fault: fault(worked),
      result: result(worked),
      formula: formulaOf(calculation.formula) ?? [],
      formulaWords: formulaOf(calculation.formula) === null ? calculation.formula : null,
      validity: calculation.validity,
      caution: cautionOf(calculation),
      practise: worked.families.map(({ title, objective, objectiveTitle, code }) => ({
        title,
        objective: `${objective} ${objectiveTitle}`,
        href: `/calculators/${calculation.id}/try/${code}?region=${region}`,
      })),
      titleBlock: titleBlock(calculation, usesRegion ? region : null),
    },
  };
}

/** Whether somebody has said otherwise, or it must be looked at. */
const isTouched = (spec: InputSpec, { faults, typed }: Worked): boolean =>
  faults.has(spec.name) || (typed[spec.name] ?? []).some((text) => text !== '');

function result(worked: Worked): CalculatorPage['data']['result'] {
  const { outcome, calculation } = worked;
  if (outcome === null) return { waiting: waiting(worked), answers: [], working: [], drawing: null };
  return {
    waiting: null,
    answers: answers(calculation, outcome),
    working: outcome.working.map(formulaLine),
    drawing: drawingFor(calculation.id, outcome),
  };
}

function inputField(spec: InputSpec, { typed, faults, region }: Worked): InputField {
  const texts = (typed[spec.name] ?? []).slice(0, 8);
  const boxes = spec.kind === 'choice' ? [] : spec.kind === 'list' && spec.fromRegion === null ? pad(texts, 6) : [texts.join('; ')];
  return {
    id: `in-${spec.name}`,
    name: spec.name,
    label: `${spec.label.charAt(0).toUpperCase()}${spec.label.slice(1)}${spec.optional && spec.fromRegion === null ? ' (may be left out)' : ''}`,
    unit: findUnit(spec.unit ?? '')?.symbol ?? spec.unit ?? '',
    unitSpoken: unitSpoken(spec.unit ?? ''),
    readsUnit: spec.unit ?? '',
    boxes: boxes.map((value, index) => ({
      id: index === 0 ? `in-${spec.name}` : `in-${spec.name}-${index + 1}`,
      value,
      label: index === 0 ? '' : `${spec.label}, number ${index + 1}`,
    })),
    choices: spec.kind === 'choice' ? choices(spec, texts[0] ?? '') : null,
    hint: hint(spec, region),
    why: faults.get(spec.name) ?? null,
  };
}

const pad = (texts: readonly string[], most: number): string[] =>
  Array.from({ length: Math.max(most, texts.length) }, (_, i) => texts[i] ?? '');

function choices(spec: InputSpec, chosen: string): InputField['choices'] {
  const listed = (spec.choices ?? []).map((value) => ({ value, label: value, chosen: value === chosen }));
  return spec.optional ? [{ value: '', label: 'As usual', chosen: chosen === '' }, ...listed] : listed;
}

function hint(spec: InputSpec, region: Worked['region']): string | null {
  const { supplyVoltage, protection, title } = regions[region];
  if (spec.fromRegion === 'supplyVoltage') return `${formatQuantity(supplyVoltage, 'V')} unless you say otherwise (${title}).`;
  if (spec.fromRegion === 'series')
    return `${protection.series.join(', ')} A unless you say otherwise (${title}); part several with semicolons.`;
  return spec.kind === 'list' ? 'One number in each box; leave the rest empty.' : null;
}

function fault({ calculation, faults }: Worked): CalculatorPage['data']['fault'] {
  const [first] = faults;
  if (first === undefined) return null;
  const [name, why] = first;
  const label = calculation.inputs.find((spec) => spec.name === name)?.label ?? name;
  return { word: 'Not worked out yet.', why: `${label.charAt(0).toUpperCase()}${label.slice(1)}: ${why}`, target: `in-${name}` };
}

function waiting({ calculation, missing, faults }: Worked): string {
  if (faults.size > 0) return 'The answer stands here once the number above is mended.';
  if (missing.length === calculation.inputs.filter(({ optional }) => !optional).length)
    return 'Type the numbers, and the answer stands here with its working.';
  return `Still to be typed: ${missing.map(({ label }) => label).join('; ')}.`;
}

export function valueText({ value, unit }: Valued): string {
  if (typeof value === 'number') return formatQuantity(value, unit ?? '', { significant: 4 });
  if (Array.isArray(value)) return value.map((one: number) => formatQuantity(one, unit ?? '', { significant: 4 })).join(', ');
  if (value === null) return 'none that fits';
  return value === true ? 'yes' : value === false ? 'no' : String(value);
}

/** What came out; beside the first, only what there is: an output for which nothing was given has no value. */
const answers = ({ id }: Calculation, { result }: Outcome): { label: string; value: string }[] =>
  Object.entries(result)
    .filter(([, { value }], index) => index === 0 || value !== null)
    .map(([name, valued]) => ({ label: outputWords(id, name), value: valueText(valued) }));

const electric = new Set(['plug', 'rescue', 'hv', 'mains', 'earth', 'battery']);
const cautionOf = ({ caution, cautionKey }: Calculation): CautionPart => ({
  sign: electric.has(cautionKey) ? 'electric' : 'general',
  text: caution,
});

function titleBlock({ title, source, regionDependence }: Calculation, region: Worked['region'] | null): TitleField[] {
  const from = source.map(
    ({ title: name, publisher, where, basis }) =>
      `${name} (${publisher}; ${where})${basis === 'memory' ? ', from memory, not yet seen' : basis === 'common-practice' ? ', common practice' : ''}`,
  );
  return [
    field('Calculator', title, region === null ? 12 : 8, { name: true }),
    ...(region === null ? [] : [field('Region', `${regions[region].title}, ${regions[region].supplyVoltage} V`, 4)]),
    ...(regionDependence === null ? [] : [field('Depends on the region', regionDependence, 12)]),
    field(source.length === 1 ? 'Source' : 'Sources', from.join('. '), 12),
  ];
}
