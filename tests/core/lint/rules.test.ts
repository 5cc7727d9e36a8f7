import { describe, expect, it } from 'vitest';
import { lint, lintRules } from '../../../src/core/lint/index.js';
import { readingGrade } from '../../../src/core/lint/pack-wide.js';
import { draftOf } from '../../../src/core/pack-draft.js';
import { fixedQuestionSchema, type FixedQuestion } from '../../../src/core/questions/schema.js';
import { smallPack } from '../../support/small-pack.js';

/**
 * Each rule once where it must speak and once where it must not. The flaws are those of the list in
 * T. M. Haladyna, S. M. Downing, M. C. Rodriguez, "A review of multiple-choice item-writing guidelines" (2002); examples are our own.
 */

const plainStem = 'Fenn wants to change a lamp in the hut. What does he do first?';

function single(stem: string, key: string, wrong: readonly string[], more: object = {}): FixedQuestion {
  return fixedQuestionSchema.parse({
    id: 'AA-01-001',
    revision: 1,
    objective: 'AA-01',
    kind: 'single',
    demand: 'apply',
    stem,
    options: [...wrong.map((text) => ({ text, why: 'Reason.' })), { text: key, key: true }],
    explanation: 'Because.',
    sources: ['book'],
    caution: 'general',
    checked: '2026-11-26',
    ...more,
  });
}

function rulesFor(...questions: FixedQuestion[]): string[] {
  const pack = smallPack();
  const found = lint(draftOf({ ...pack, questions, families: [] }), true);
  return [...new Set(found.map(({ rule }) => rule))].sort();
}

const fine = ['Pull the plug out', 'Ask for a torch', 'Open a window'] as const;

describe('the rules of the lint', () => {
  it('find nothing in a plain question', () => {
    expect(rulesFor(single(plainStem, 'Switch it off', fine))).toEqual([]);
  });

  it.each<[string, FixedQuestion]>([
    ['longest-key', single(plainStem, 'Switch the lamp off and wait until it is cold', fine)],
    ['specific-key', single(plainStem, 'Wait for 10 minutes', fine)],
    ['specific-key', single(plainStem, 'Wait (it is hot)', fine)],
    ['absolute-words', single(plainStem, 'Switch it off', ['Only pull the plug', 'Never touch it', 'Open a window'])],
    ['vague-key', single(plainStem, 'Usually wait a while', fine)],
    ['negative-option', single(plainStem, 'Not touch it yet', fine)],
    ['repeated-word', single('Fenn finds a scorched flex in the hut. What does he do first?', 'Unplug the flex', fine)],
    [
      'convergence',
      single(plainStem, 'Red plug, long lead', ['Red plug, short cable', 'Blue plug, long lead', 'Red socket, long lead'], {}),
    ],
    ['opposite-pair', single(plainStem, 'The current rises', ['The current falls', 'Ask for a torch', 'Open a window'])],
    ['unit-cue', single('What current flows?', '10 A', ['2', '3', '5'])],
    ['punctuation-cue', single(plainStem, 'Switch the lamp off.', fine)],
    ['same-option', single(plainStem, 'Switch it off', ['Pull it', 'Push  it', 'push it.'])],
    ['same-option', single('What current flows?', '0.5 A', ['500 mA', '2 A', '3 A'])],
    ['nearly-same-option', single(plainStem, 'Switch off', ['Wire them in parallel', 'Wire them in parallels', 'Open a window'])],
    ['overlapping-ranges', single('How far away is it?', 'below 5 m', ['2 m to 8 m', '9 m to 12 m', 'over 20 m'])],
    ['catch-all-option', single(plainStem, 'Switch it off', ['All of the above', 'Pull it', 'Push it'])],
    ['combined-option', single(plainStem, 'Switch it off', ['A and B', 'Pull it', 'Push it'])],
    [
      'unequal-options',
      single(plainStem, 'Pull the plug out now', [
        'Ask somebody else in the hut for a torch and hold it',
        'Open the window a bit',
        'Wait a little longer',
      ]),
    ],
    ['mixed-options', single('What current flows?', '2 A', ['3 A', '5 A', 'It depends on the day'])],
    ['mixed-options', single('What is it?', '2 A', ['3 V', '5 A', '7 A'])],
    ['numbers-out-of-order', single('What current flows?', '4 A', ['3 A', '7 A', '5 A'])],
    ['implausible-option', single('What current flows?', '8 A', ['1 mA', '2 A', '5 A'], { order: 'fixed' })],
    ['exhaustive-subset', single('What becomes of the current?', 'lower', ['higher', 'the same', 'It stops on Sundays'])],
    [
      'repeated-opening',
      single(plainStem, 'He should first switch off', ['He should first ask', 'He should first wait', 'He should first eat']),
    ],
    ['negative-stem', single('Fenn changes a lamp. Which of these should he not do?', 'Switch the lamp off', fine)],
    ['double-negative', single('Fenn changes a lamp. Which of these should he not do?', 'Work without light', fine)],
    ['article-cue', single('The thing that protects a lead from too much current is an', 'fuse', ['earth rod', 'umbrella', 'insulator'])],
    ['number-cue', single('What Fenn needs for this are', 'two spanners', ['a hammer', 'three nails', 'some tape'])],
    ['long-stem', single(`${'Fenn has a lamp and a lead and a plug and '.repeat(5)}what does he do?`, 'Switch the lamp off', fine)],
    ['unfocused-stem', single('Which of these is true?', 'Switch the lamp off', fine)],
    ['unfocused-stem', single('Fenn changes the lamp in the hut', 'Switch the lamp off', fine)],
    ['blanks', single('A ____ protects a ____ from fire.', 'Switch the lamp off', fine)],
    ['depends-on-another', single('What else would the person in the previous question do with the lamp?', 'Switch the lamp off', fine)],
    ['opinion', single('What do you think protects the lead of the lamp?', 'Switch the lamp off', fine)],
    ['unknown-abbreviation', single('What does the QZX of the lamp protect?', 'Switch the lamp off', fine)],
  ])('%s speaks of a question that breaks it', (rule, question) => {
    expect(rulesFor(question)).toContain(rule);
  });

  it.each<[string, FixedQuestion]>([
    ['longest-key', single(plainStem, 'Switch it off, then wait', fine)],
    ['specific-key', single(plainStem, 'Wait for 10 minutes', ['Wait for 2 minutes', 'Ask for a torch', 'Open a window'])],
    ['absolute-words', single(plainStem, 'Never touch it', ['Only pull the plug', 'Always ask', 'Open a window'])],
    ['vague-key', single(plainStem, 'Usually wait', ['Often ask', 'Pull it', 'Push it'])],
    ['negative-option', single(plainStem, 'Not touch it', ['Do not wait', 'Pull it', 'Push it'])],
    ['repeated-word', single('Fenn finds a scorched flex. What does he do?', 'Unplug the flex', ['Tape the flex', 'Ask', 'Wait'])],
    [
      'opposite-pair',
      single('What becomes of current and voltage?', 'The current rises', ['The current falls', 'The voltage rises', 'The voltage falls']),
    ],
    ['same-option', single('What current flows?', '0.5 A', ['50 mA', '2 A', '3 A'])],
    ['nearly-same-option', single(plainStem, 'Use the 13 A fuse here', ['Use the 10 A fuse here', 'Use the 3 A fuse here', 'Wait'])],
    ['overlapping-ranges', single('How far away is it?', 'up to 5 m', ['5 m to 10 m', '10 m to 20 m', 'over 20 m'])],
    ['overlapping-ranges', single('What does the pair give?', '24 V and 50 Ah', ['12 V and 50 Ah', '24 V and 100 Ah', '12 V and 100 Ah'])],
    ['catch-all-option', single(plainStem, 'Switch all of it off', fine)],
    ['combined-option', single(plainStem, 'Use a class A and B fire blanket', fine)],
    ['unequal-options', single('Which is it?', 'Iron', ['Copper-nickel', 'Tin', 'Gold'])],
    ['mixed-options', single('What current flows?', '2 A', ['3 A', '500 mA', '7 A'])],
    ['numbers-out-of-order', single('What current flows?', '7 A', ['3 A', '4 A', '5 A'], { order: 'fixed' })],
    ['implausible-option', single('What current flows?', '8 A', ['0 A', '2 A', '5 A'], { order: 'fixed' })],
    ['exhaustive-subset', single('What becomes of it?', 'lower', ['higher', 'the same', 'unchanged'])],
    ['repeated-opening', single(plainStem, 'Pull the plug', ['Pull the lead', 'Pull the rope', 'Wait'])],
    ['negative-stem', single('The lamp does not light. What does Fenn do first?', 'Switch the lamp off', fine)],
    ['negative-stem', single('Which of these should Fenn NOT do to the lamp?', 'Switch the lamp off', fine)],
    ['article-cue', single('The thing that protects a lead is an', 'earth rod', ['umbrella', 'insulator', 'oak'])],
    ['unfocused-stem', single('Fenn looks at a lamp. Which of these is true of it?', 'Switch the lamp off', fine)],
    ['blanks', single('A lead is protected from too much current by a ____.', 'fuse', fine)],
    ['unknown-abbreviation', single('What does a rotary current device (QZX) do? The QZX is new.', 'Switch the lamp off', fine)],
  ])('%s is silent where it is kept', (rule, question) => {
    expect(rulesFor(question)).not.toContain(rule);
  });

  it('speak of keys that stand in one place or follow a pattern, over a pack', () => {
    const texts = ['north', 'east', 'south', 'west'];
    const words =
      'anvil bucket candle drum engine funnel girder hammer inkwell jigsaw kettle lantern mallet needle oven pulley quill rope saddle teapot'.split(
        ' ',
      );
    const pack = (place: (index: number) => number) =>
      words.map((word, index) => {
        const question = single(`Where does the ${word} of the club point on a ${word}day?`, 'x', ['y', 'z', 'w'], {
          id: `AA-01-${String(index + 100)}`,
        });
        const options = texts.map((text, at) =>
          at === place(index) ? { text: `${text} ${word}`, key: true } : { text: `${text} ${word}`, why: 'No.' },
        );
        return fixedQuestionSchema.parse({ ...question, options });
      });
    expect(rulesFor(...pack(() => 1))).toEqual(expect.arrayContaining(['key-positions', 'key-run']));
    expect(rulesFor(...pack((index) => index % 4))).toEqual(expect.arrayContaining(['key-run']));
    expect(rulesFor(...pack((index) => (index * 7 + (index >> 2)) % 4))).not.toEqual(expect.arrayContaining(['key-positions']));
  });

  it('count 4, 16, 14 and 6 of 40 keys as fair, as the chi-square test does (10.4, p = 0.015)', () => {
    const counts = [4, 16, 14, 6].flatMap((count, place) => Array<number>(count).fill(place));
    const order = counts.map((place, index) => [place, (index * 17) % 40] as const).sort((a, b) => a[1] - b[1]);
    const questions = order.map(([place], index) => {
      const question = single(`What about word${index} and thing${index}?`, 'x', ['y', 'z', 'w'], { id: `AA-01-${100 + index}` });
      const options = ['p', 'q', 'r', 's'].map((text, at) =>
        at === place ? { text: text + index, key: true } : { text: text + index, why: 'No.' },
      );
      return fixedQuestionSchema.parse({ ...question, options });
    });
    expect(rulesFor(...questions)).not.toContain('key-positions');
  });

  it('speak of two questions in nearly the same words, and name the first', () => {
    const first = single('Fenn finds a scorched plug on the lamp in the hut. What does he do?', 'Switch the lamp off', fine);
    const second = single('Tam finds a scorched plug on the lamp in the hut. What does she do?', 'Open the hut', fine, { id: 'AA-01-002' });
    const found = lint(draftOf({ ...smallPack(), questions: [first, second], families: [] }), true).filter(
      ({ rule }) => rule === 'similar-question',
    );
    expect(found).toMatchObject([{ path: ['questions', 1, 'stem'], first: ['questions', 0, 'stem'] }]);
    expect(found[0]?.message).toContain('AA-01-001');
  });

  it('are each explained, with a source, under a name of their own', () => {
    expect(new Set(lintRules.map(({ name }) => name)).size).toBe(lintRules.length);
    for (const { name, why, source, severity } of lintRules) {
      expect(name).toMatch(/^[a-z]+(-[a-z]+)*$/);
      expect(why.length).toBeGreaterThan(20);
      expect(source.length).toBeGreaterThan(5);
      expect(['error', 'warning']).toContain(severity);
    }
  });
});

describe('the reading grade', () => {
  it('is that of the formula of Flesch and Kincaid (Kincaid and others 1975; the formula from memory), counted by hand', () => {
    // Ten sentences of ten words of one syllable each: 0.39 × 10 + 11.8 × 1 - 15.59.
    const text = Array<string>(10).fill('The cat sat on the mat and the dog ran.').join(' ');
    expect(readingGrade([text])).toBeCloseTo(0.39 * 10 + 11.8 - 15.59, 6);
  });

  it('is none under a hundred words', () => {
    expect(readingGrade(['The cat sat.'])).toBeNull();
  });
});
