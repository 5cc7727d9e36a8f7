import { describe, expect, it } from 'vitest';
import { checkOptions } from '../../src/core/option-checks.js';
import { singleQuestionSchema } from '../../src/core/questions/kinds.js';
import type { SingleQuestion } from '../../src/core/questions/schema.js';

const question = (key: string, ...wrong: string[]): SingleQuestion =>
  singleQuestionSchema.parse({
    id: 'AA-01-001',
    revision: 1,
    objective: 'AA-01',
    kind: 'single',
    demand: 'recall',
    stem: 'Which?',
    options: [...wrong.map((text) => ({ text, why: 'Reason.' })), { text: key, key: true }],
    explanation: 'Because.',
    sources: ['book'],
    checked: '2026-11-25',
  });
const rules = (...texts: [string, ...string[]]): string[] =>
  checkOptions(question(...texts), ['questions', 4]).map(({ level, rule, path }) => `${level} ${rule} ${path.join('.')}`);

describe('checkOptions', () => {
  it('finds nothing in options that differ and are about as long as each other', () => {
    expect(rules('Switch off at the plug', 'Pull the person away', 'Pour water on it')).toEqual([]);
  });

  it('finds options that differ only in case, spaces or a full stop', () => {
    expect(rules('Pull it', 'Push  it', 'push it.')).toEqual(['error same-option questions.4.options.1.text']);
    expect(checkOptions(question('a', 'b', 'B'), ['questions', 4])[0]?.first).toEqual(['questions', 4, 'options', 0, 'text']);
  });

  it('finds a key that is longer than every other option by half and by 20 letters', () => {
    const letters = (count: number): string => 'x'.repeat(count);
    // The longest wrong option has 40: half more is 60, 20 letters more is 60 as well. With 20 the second bound (40) decides, with 60 the first (90).
    expect(rules(letters(60), letters(40), 'a')).toEqual(['warning longest-key questions.4.options.2.text']);
    expect(rules(letters(59), letters(40), 'a')).toEqual([]);
    expect(rules(letters(39), letters(20), 'a')).toEqual([]);
    expect(rules(letters(40), letters(20), 'a')).toHaveLength(1);
    expect(rules(letters(89), letters(60), 'a')).toEqual([]);
    expect(rules(letters(90), letters(60), 'a')).toHaveLength(1);
  });

  it('finds the options that only point at the others', () => {
    expect(rules('All of the above', 'One', 'Two')).toEqual(['warning catch-all-option questions.4.options.2.text']);
    expect(rules('Three', 'None of these.', 'Two')).toEqual(['warning catch-all-option questions.4.options.0.text']);
    expect(rules('All of the wire', 'One', 'None above 3 A')).toEqual([]);
  });
});
