import { describe, expect, it } from 'vitest';
import { certaintyRows, surenessOf } from '../../../src/core/progress/sureness.js';
import { sharesOnScale } from '../../../src/core/charts/shares.js';

const sure = (answers: number, right: number) => certaintyRows([{ certainty: 'sure', answers, right }]);

describe('how well sure means sure', () => {
  it('has a row for each certainty, with the interval that was published for such counts', () => {
    const rows = certaintyRows([{ certainty: 'fairly', answers: 263, right: 81 }]);
    expect(rows.map(({ certainty }) => certainty)).toEqual(['sure', 'fairly', 'guessing']);
    // Newcombe 1998 (Statistics in Medicine 17:857), table I, method 3: 81 of 263 gives 0.2553 to 0.3662.
    expect(rows[1]?.share?.low).toBeCloseTo(0.2553, 4);
    expect(rows[1]?.share?.high).toBeCloseTo(0.3662, 4);
    expect(rows[0]?.share).toBeNull();
  });

  it.each([
    [0, 0, 'too-few'],
    [19, 3, 'too-few'],
    [20, 10, 'under'], // 95 % interval 0.30 to 0.70
    [20, 17, 'open'], // 0.64 to 0.95
    [20, 18, 'well'],
    [200, 170, 'under'], // 0.79 to 0.89
  ])('of %i sure answers with %i right says %s', (answers, right, expected) => {
    expect(surenessOf(sure(answers, right))).toBe(expected);
  });

  it('is drawn with a dot and two limits for each row that has answers', () => {
    const svg = sharesOnScale(
      [
        { label: 'Sure <b>', share: { value: 0.5, low: 0.25, high: 1 } },
        { label: 'Guessing', share: null },
      ],
      'name',
    );
    expect(svg.match(/<circle/g)).toHaveLength(1);
    expect(svg.match(/class="limit"/g)).toHaveLength(3);
    // The scale goes from 96 to 364, so a half lies at 230.
    expect(svg).toContain('cx="230"');
    expect(svg).toContain('Sure &lt;b&gt;');
  });
});
