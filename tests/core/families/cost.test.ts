import { beforeAll, describe, expect, it } from 'vitest';
import { checkFamily } from '../../../src/core/families/draw.js';
import { familySchema } from '../../../src/core/families/schema.js';
import { answerWith, invented } from './invented.js';

/** Families that would cost much, or give no number, are refused when a pack is read and never in front of a candidate. */

/** What is wrong with a family; empty when it would be taken. */
function faultsOf(changes: Record<string, unknown>): string[] {
  const shape = familySchema.safeParse(invented(changes));
  if (!shape.success) return shape.error.issues.map(({ path }) => path.join('.'));
  return checkFamily(shape.data).map(({ path, message }) => `${path.join('.')}: ${message}`);
}

const power = (changes: object): object => ({ inputs: { P: { label: 'power', unit: 'W', min: 100, max: 2000, step: 100, ...changes } } });
const expr = (text: string): object => ({ answer: answerWith({ expr: text }) });
const chain = Object.fromEntries(Array.from({ length: 12 }, (_, at) => [`A${at}`, at === 0 ? 'P * P' : `A${at - 1} * A${at - 1}`]));

describe('a family', () => {
  // Once, so that what follows is measured and not the first reading of the program's own parts.
  beforeAll(() => void faultsOf({}));

  it.each<[string, object]>([
    ['a tower of powers', expr('9^9^9^9')],
    ['a tower of powers by the function', expr('pow(9, pow(9, pow(9, 9)))')],
    ['a number beyond all numbers', expr('1e400')],
    ['a number of 400 digits', expr('9'.repeat(400))],
    ['a division by nothing', expr('P / 0')],
    ['a division by what may be nothing', expr('P / (P - 300)')],
    ['a root of less than nothing', expr('P / V * sqrt(0 - 1)')],
    ['3,000 brackets', expr('('.repeat(3000))],
    ['20,000 terms', expr(`P${' + P'.repeat(20_000)}`)],
    ['a step of nothing', power({ step: 0 })],
    ['a step backwards', power({ step: -1 })],
    ['a step that never arrives', power({ min: 0, max: 1e12, step: 1e-12 })],
    ['an empty range', power({ min: 2000, max: 100 })],
    ['a range without a number', power({ min: Number.NaN })],
    ['a range without an end', power({ max: Number.POSITIVE_INFINITY })],
    ['names that go round in a circle', { derived: { A: 'B + P', B: 'A + P' } }],
    ['a name that is made of itself', { derived: { A: 'A + P' } }],
    ['squares of squares of squares', { derived: chain }],
    ['constraints that nothing meets', { constraints: ['P > 1000', 'P < 500'] }],
    ['a name of an object’s own', expr('constructor')],
  ])('with %s is refused, and costs little', (_what, changes) => {
    const start = process.cpuUsage();
    const faults = faultsOf(changes as Record<string, unknown>);
    const { user, system } = process.cpuUsage(start);
    expect(faults.length).toBeGreaterThan(0);
    expect((user + system) / 1000).toBeLessThan(500);
  });
});
