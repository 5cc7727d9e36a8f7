import { describe, expect, it } from 'vitest';
import { analyse } from '../../../src/core/analysis/analyse.js';
import type { Interval } from '../../../src/core/analysis/correlation.js';
import type { Responses } from '../../../src/core/analysis/responses.js';
import { expected, handMade, lsat6, withoutBlanks, type Expected } from '../../support/item-analysis.js';

/**
 * Held against tests/data/item-analysis/expected.json: exact fractions, rounded once; R (psych, psychometric, psy, multilevel) agrees to
 * 3.2e-14. lsat6 is the table of Bock and Lieberman (1970).
 */

const cases: [string, Responses, Expected][] = [
  ['lsat6', lsat6(), expected.lsat6.missingAsWrong],
  ['edge12, a blank counted as wrong', handMade('edge12'), expected.edge12.missingAsWrong],
  ['edge12, rows with a blank left out', withoutBlanks(handMade('edge12')), expected.edge12.completeCases],
  ['flat4', handMade('flat4'), expected.flat4.missingAsWrong],
];

/** What is null must be null, and the rest agree to 1e-12. */
function same(ours: number | null | undefined, theirs: number | null, what: string): void {
  if (theirs === null) expect(ours, what).toBeNull();
  else expect(Math.abs((ours ?? Number.NaN) - theirs), `${what}: ${ours} for ${theirs}`).toBeLessThan(1e-12);
}

function sameInterval(ours: Interval | null | undefined, theirs: [number, number] | null, what: string): void {
  same(ours?.low ?? null, theirs?.[0] ?? null, `${what}, low`);
  same(ours?.high ?? null, theirs?.[1] ?? null, `${what}, high`);
}

describe.each(cases)('%s', (_name, responses, { test, items }) => {
  const { paper, questions } = analyse(responses);

  it('has the expected figures of the paper', () => {
    expect([paper.n, paper.k]).toEqual([test.n, test.k]);
    same(paper.mean, test.meanScore, 'mean');
    same(paper.sd, test.sd_n1, 'sd');
    same(paper.kr20, test.kr20, 'KR-20');
    same(paper.kr20, test.cronbachAlpha, 'alpha');
    same(paper.sem, test.sem_n1, 'SEM');
    sameInterval(paper.kr20Interval, test.alphaFeldt95, 'Feldt');
    // The mistake of mixing divisors must be visible where it makes a difference.
    if (test.kr20 !== null) expect(Math.abs((paper.kr20 ?? 0) - (test.kr20_mixedDenominators_trap ?? 0))).toBeGreaterThan(1e-4);
  });

  it('has the expected figures of every question', () => {
    expect(questions.map(({ id, n, right }) => [id, n, right])).toEqual(items.map(({ item, n, correct }) => [item, n, correct]));
    items.forEach((item, place) => {
      const ours = questions[place];
      same(ours?.facility, item.facility, `${item.item} facility`);
      sameInterval(ours?.facilityInterval, item.facilityWilson95, `${item.item} Wilson`);
      same(ours?.itemTotal, item.pointBiserialItemTotal, `${item.item} item-total`);
      same(ours?.itemRest, item.pointBiserialItemRest, `${item.item} item-rest`);
      sameInterval(ours?.itemRestInterval, item.pointBiserialItemRestFisher95, `${item.item} Fisher`);
      same(ours?.upperLower27, item.discrimination27.inclusive, `${item.item} upper-lower`);
      same(ours?.alphaIfDropped, item.alphaIfDropped, `${item.item} alpha if dropped`);
    });
  });

  it('has the expected figures of every option, the blank among them', () => {
    items.forEach(({ item, options = [] }, place) => {
      const ours = questions[place]?.options ?? [];
      expect(ours.map(({ option, count }) => [option, count])).toEqual(options.map(({ option, count }) => [option, count]));
      expect(options.filter(({ isKey }) => isKey).map(({ option }) => option)).toEqual(options.length === 0 ? [] : [questions[place]?.key]);
      options.forEach((option, at) => {
        same(ours[at]?.itemTotal, option.pointBiserialTotal, `${item} ${option.option} with total`);
        same(ours[at]?.itemRest, option.pointBiserialRest, `${item} ${option.option} with rest`);
      });
    });
  });
});
