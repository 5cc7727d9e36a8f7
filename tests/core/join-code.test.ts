import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { RungwiseError } from '../../src/core/errors.js';
import { codeLength, codeSigns, inFours, longestCodeText, makeCode, readCode } from '../../src/core/join-code.js';

const fixed = { seed: 20_261_125, numRuns: 300 };
const codes = fc
  .array(fc.nat(codeSigns.length - 1), { minLength: codeLength, maxLength: codeLength })
  .map((places) => places.map((place) => codeSigns[place] as string).join(''));

/** Any sign of Unicode, and more often one of those that codes are typed with. */
const sign = fc.oneof(fc.integer({ min: 0, max: 0x10_ff_ff }), fc.integer({ min: 0x20, max: 0x7a }));

function messageOf(text: string): string {
  const reading = readCode(text);
  return reading.understood ? `understood: ${reading.code}` : reading.message;
}

describe('a joining code', () => {
  // 26 letters and 10 digits without 0, O, 1, I and L leave 31. 31^8 = 852,891,037,441 by hand (31^2 = 961, 31^4 = 923,521, squared).
  it('has eight of 31 signs, none of which is taken for another', () => {
    expect(codeSigns).toHaveLength(31);
    expect(new Set(codeSigns).size).toBe(31);
    expect(codeSigns).toMatch(/^[2-9A-Z]+$/);
    expect(codeSigns).not.toMatch(/[0O1IL]/);
    expect(codeSigns.length ** codeLength).toBe(852_891_037_441);
  });

  it('takes each sign as chance gives it', () => {
    const places = [0, 30, 1, 29, 8, 7, 15, 2];
    let asked = 0;
    const code = makeCode((below) => {
      expect(below).toBe(31);
      return places[asked++] as number;
    });
    // Counted off in the row 23456789ABCDEFGHJKMNPQRSTUVWXYZ, : the digits are places 0 to 7, A is 8, so H is 15.
    expect(code).toBe('2Z3YA9H4');
    expect(asked).toBe(8);
  });

  it.each([-1, 31, 0.5, Number.NaN])('is not handed out when chance gives %s', (place) => {
    expect(() => makeCode(() => place)).toThrow(RungwiseError);
  });

  it('is read as it was printed, in small letters, with spaces and hyphens anywhere, and from the end of an address', () => {
    const gap = fc.constantFrom('', ' ', '-', '  ', '–', '\u00a0', '\t', '.');
    fc.assert(
      fc.property(codes, fc.array(gap, { minLength: 9, maxLength: 9 }), fc.boolean(), (code, gaps, small) => {
        const loose = [...code].map((sign, index) => gaps[index] + (small ? sign.toLowerCase() : sign)).join('') + gaps[8];
        expect(messageOf(loose)).toBe(`understood: ${code}`);
        expect(messageOf(inFours(code))).toBe(`understood: ${code}`);
        expect(messageOf(`http://192.0.2.10:3000/join/${code}`)).toBe(`understood: ${code}`);
      }),
      fixed,
    );
  });

  it('is printed in fours', () => expect(inFours('K7QW3MXP')).toBe('K7QW 3MXP'));

  it('never lets any text through but one of eight good signs, and never breaks', () => {
    fc.assert(
      fc.property(
        fc.array(sign, { maxLength: 300 }).map((signs) => String.fromCodePoint(...signs)),
        (text) => {
          const reading = readCode(text);
          if (reading.understood) expect(reading.code).toMatch(/^[2-9A-HJKMNP-Z]{8}$/);
          else expect(reading.message.length).toBeGreaterThan(10);
        },
      ),
      fixed,
    );
  });

  it.each([
    ['', 'Type the code from your tutor'],
    [' - ', 'Type the code from your tutor'],
    ['K7QW 3MX', '7 letters and digits were read, and a code has eight.'],
    ['K', '1 letter or digit was read, and a code has eight.'],
    ['K7QW 3MXPP', '9 letters and digits were read, and a code has eight.'],
    ['K7QW 3MX0', '“0” is in no code. There is no 0, O, 1, I or L in one, since they look alike.'],
    ['oliver 12', '“O”, “L”, “I” and other signs are in no code. There is no 0, O, 1, I or L'],
    ['K7QW 3MX!', '“!” is in no code. Look again'],
    ['x'.repeat(longestCodeText + 1), 'That is too long to be a code.'],
  ])('%j is met with what is wrong', (text, message) => expect(messageOf(text)).toContain(message));
});
