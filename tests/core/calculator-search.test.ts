import { describe, expect, it } from 'vitest';
import { searchCalculations, topicTitle } from '../../src/core/calculator-search.js';
import { calculations } from '../../shared/safety-maths/index.js';

const first = (words: string): string[] =>
  searchCalculations(calculations, words)
    .slice(0, 4)
    .map(({ id }) => id);

describe('finding a calculator by plain words', () => {
  // What a beginner would type; common practice, no source.
  it.each([
    ['fuse for a heater', 'fuse-from-power'],
    ['which fuse', 'fuse-from-power'],
    ['how long will my battery last', 'battery-run-time'],
    ['ladder', 'ladder-base'],
    ['how far out do the ladders feet go', 'ladder-base'],
    ['thunder', 'lightning-distance'],
    ['how far to keep people from the antenna', 'compliance-distance'],
    ['voltage drop', 'dc-voltage-drop'],
    ['dbm', 'dbm-from-watts'],
    ['safe distance aerial', 'compliance-distance'],
    ['kettle fuse', 'fuse-from-power'],
    ['how long battery', 'battery-run-time'],
    ['voltage drop car radio', 'dc-voltage-drop'],
  ])('%s finds %s among the first four', (words, id) => {
    expect(first(words)).toContain(id);
  });

  it.each([
    ['ladder angel', 'ladder-angle'],
    ['batery lasts', 'battery-run-time'],
    ['lightening', 'lightning-distance'],
    ['thunnder', 'lightning-distance'],
    ['kettel fuse', 'fuse-from-power'],
  ])('%s, a slip of the fingers, finds %s among the first four', (words, id) => {
    expect(first(words)).toContain(id);
  });

  it('takes no other word of the same length for a slip, and no short word', () => {
    expect(searchCalculations(calculations, 'laptops')).toEqual([]);
    expect(searchCalculations(calculations, 'erb')).toEqual([]);
  });

  it('shows all that have a page when nothing is asked, and nothing for words that fit nothing', () => {
    expect(searchCalculations(calculations, ' ').length).toBeGreaterThanOrEqual(45);
    expect(searchCalculations(calculations, 'zebra')).toEqual([]);
    expect(searchCalculations(calculations, 'the of')).toEqual([]);
    expect(searchCalculations(calculations, 'x'.repeat(100_000))).toEqual([]);
  });

  it('has a title for every topic', () => {
    for (const { topic } of calculations) expect(topicTitle(topic)).not.toBe(topic);
  });
});
