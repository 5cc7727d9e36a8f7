import { describe, expect, it } from 'vitest';
import { readCode } from '../../src/core/join-code.js';
import { randomFrom } from '../../src/core/random.js';
import { readPhrase } from '../../src/core/return-phrase.js';
import { longestAnswer, readQuantity } from '../../shared/numeric-answer/parse.js';

/** The readers of what people type, with many more texts than a property test can look at closely: always the same ones. */

const pieces = [
  ...'0123456789.,-+/^()½²µΩ°%\'"=:~ \t\n\0',
  'm',
  'M',
  'mm',
  'kW',
  'dB',
  'e9',
  'E-400',
  '１',
  '٣',
  'NaN',
  'Infinity',
  '1e400',
  '\u202e',
  '\u200b',
  '\ud800',
  '\udc00',
  '😀',
  'about',
  'and a half',
  'constructor',
  '__proto__',
  'abandon',
  'K7QW',
  '-',
];

function texts(seed: string, count: number, most: number): string[] {
  const random = randomFrom(seed);
  return Array.from({ length: count }, () =>
    Array.from({ length: random.below(most) }, () =>
      random.below(8) === 0 ? String.fromCharCode(random.below(65_536)) : (pieces[random.below(pieces.length)] ?? ''),
    ).join(''),
  );
}

describe('whatever is typed', () => {
  it('as an answer is a finite number or a reason, 50,000 times', () => {
    const units = ['W', 'V', 'm', 'mA', 'ohm', 'dB(A)', 'h', '%', ''];
    const faults: string[] = [];
    let understood = 0;
    for (const [at, text] of texts('answers', 50_000, 12).entries()) {
      const reading = readQuantity(text, units[at % units.length] ?? '');
      if (reading.understood) understood += 1;
      const fine = reading.understood ? Number.isFinite(reading.value) && text.length <= longestAnswer : reading.message.length > 20;
      if (!fine) faults.push(JSON.stringify(text));
    }
    expect(faults).toEqual([]);
    // Or else only one side would have been looked at.
    expect(understood).toBeGreaterThan(500);
  });

  it('as a return phrase or a joining code is one, or a reason, 20,000 times', () => {
    const faults: string[] = [];
    for (const text of texts('phrases', 20_000, 20)) {
      const [phrase, code] = [readPhrase(text), readCode(text)];
      if (phrase.understood ? phrase.words.length !== 7 : phrase.message.length < 20) faults.push(`phrase ${JSON.stringify(text)}`);
      if (code.understood ? !/^[2-9A-HJKMNP-Z]{8}$/.test(code.code) : code.message.length < 20) faults.push(`code ${JSON.stringify(text)}`);
    }
    expect(faults).toEqual([]);
  });
});
