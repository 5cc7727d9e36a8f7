import { checkRecord } from '../../shared/safety-maths/check-record.js';
import { draw } from '../../src/core/families/draw.js';
import { variants } from '../core/families/shipped.js';
import { calculations } from '../../shared/safety-maths/index.js';
import { publishedValues } from './published-values.js';

/** Inputs that each calculation can work, by its id: those of a family it works, or of the first published value it answers to. */
export const examples = new Map<string, Readonly<Record<string, unknown>>>([
  // No published value is at hand for these.
  ['fuse-from-current', { load: 8 }],
  ['extension-lead-load', { loads: [2000, 990] }],
]);

// Numbers of the families, which also come to calculations without a published value.
for (const [, region, compiled] of variants) {
  const { calculator } = draw(compiled, 1);
  if (region === 'uk' && calculator !== null && !examples.has(calculator.id)) examples.set(calculator.id, calculator.inputs);
}

for (const record of publishedValues) {
  const calculation = calculations.find(({ checks }) => checks.some(({ name }) => name === record.function));
  if (calculation === undefined || examples.has(calculation.id)) continue;
  const { run } = calculation;
  // The record's keys are turned into inputs on the way to `run`, so that is where they are seen.
  const watched = calculation as { run: typeof run };
  watched.run = (inputs, region) => {
    examples.set(calculation.id, inputs);
    return run(inputs, region);
  };
  checkRecord(record);
  watched.run = run;
}

/** The address of a calculator's page with its example put in; null when it has none. */
export function exampleAddress(id: string, region = 'uk'): string | null {
  const inputs = examples.get(id);
  if (inputs === undefined) return null;
  const query = new URLSearchParams();
  for (const [name, value] of Object.entries(inputs))
    for (const one of Array.isArray(value) ? value : [value]) query.append(name, String(one));
  return `/calculators/${id}?${query.toString()}&region=${region}`;
}
