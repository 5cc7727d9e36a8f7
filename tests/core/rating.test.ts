import { describe, expect, it } from 'vitest';
import { offersFreshDraw, paperRating, ratingOf, surelyWrongAfter, type RatedAnswer } from '../../src/core/rating.js';

// The rows of the table of ratings from certainty, worked out and compared on simulated reporters before the project began
// (20,000 items, 8 reviews, three kinds of reporter); they are the specification, written here by hand.
const option = (right: boolean, certainty: RatedAnswer['certainty'], expectedRecall: number | null): RatedAnswer => ({
  way: 'options',
  right,
  certainty,
  expectedRecall,
  stage: 'first',
});
const number = (right: boolean, certainty: RatedAnswer['certainty'], stage: RatedAnswer['stage'] = 'first'): RatedAnswer => ({
  way: 'number',
  right,
  certainty,
  expectedRecall: 0.9,
  stage,
});

describe('rating of a chosen option', () => {
  it.each([
    ['wrong and sure', option(false, 'sure', 0.9), 1],
    ['wrong and guessing', option(false, 'guessing', null), 1],
    ['right and sure', option(true, 'sure', null), 3],
    ['right and fairly sure', option(true, 'fairly', 0.2), 3],
    ['right by a guess at first sight', option(true, 'guessing', null), 1],
    ['right by a guess where recall was unlikely', option(true, 'guessing', 0.49), 1],
    ['right by a guess where recall was likely', option(true, 'guessing', 0.5), 2],
  ])('%s', (_name, answer, rating) => {
    expect(ratingOf(answer)).toBe(rating);
  });
});

describe('rating of a typed number', () => {
  it.each([
    ['right and sure', number(true, 'sure'), 3],
    ['right and guessing', number(true, 'guessing'), 2],
    ['wrong at first does not move the memory yet', number(false, 'sure'), null],
    ['right on the fresh draw', number(true, 'sure', 'fresh'), 2],
    ['wrong on the fresh draw', number(false, 'guessing', 'fresh'), 1],
    ['practice never moves the memory', number(true, 'sure', 'practice'), null],
  ])('%s', (_name, answer, rating) => {
    expect(ratingOf(answer)).toBe(rating);
  });

  it('a fresh draw is offered after the first wrong number only', () => {
    expect(offersFreshDraw(number(false, 'sure'))).toBe(true);
    expect(offersFreshDraw(number(false, 'sure', 'fresh'))).toBe(false);
    expect(offersFreshDraw(number(false, 'sure', 'practice'))).toBe(false);
    expect(offersFreshDraw(number(true, 'sure'))).toBe(false);
    expect(offersFreshDraw(option(false, 'sure', null))).toBe(false);
  });
});

describe('sure and wrong', () => {
  it('is set by a sure wrong answer, kept by a guess, cleared by a right answer that was no guess', () => {
    expect(surelyWrongAfter(false, option(false, 'sure', null))).toBe(true);
    expect(surelyWrongAfter(false, option(false, 'fairly', null))).toBe(false);
    expect(surelyWrongAfter(true, option(false, 'guessing', null))).toBe(true);
    expect(surelyWrongAfter(true, option(true, 'guessing', null))).toBe(true);
    expect(surelyWrongAfter(true, option(true, 'fairly', null))).toBe(false);
  });
});

// The rule as it is documented: from a recall of 0.5 on a right answer counts as known, below it and at first sight as recalled with doubt.
describe('rating of an answer on a paper', () => {
  it.each([
    ['wrong at first sight', false, null, 1],
    ['wrong where recall was certain', false, 1, 1],
    ['right at first sight', true, null, 2],
    ['right where recall was out of the question', true, 0, 2],
    ['right just below the half', true, 0.499, 2],
    ['right at the half', true, 0.5, 3],
    ['right where recall was likely', true, 0.9, 3],
  ])('%s', (_name, right, expectedRecall, rating) => {
    expect(paperRating(right, expectedRecall)).toBe(rating);
  });
});
