import { describe, expect, it } from 'vitest';
import { parseExpression } from '../../../src/core/families/expression.js';
import { formulaMathML, substitutedMathML, workingMathML } from '../../../src/core/families/formula.js';
import { draw } from '../../../src/core/families/draw.js';
import { work } from '../../../src/core/families/work.js';
import { inventedCompiled } from './invented.js';
import { compiledFor, variants } from './shipped.js';

const inSymbols = (symbol: string, text: string): string => formulaMathML(symbol, parseExpression(text)).join('\n');
const math = (inner: string): string => `<math displaystyle="true"><mrow>${inner}</mrow></math>`;
/** What is read, with fractions in brackets: enough to see order and brackets by. */
const heard = (mathml: string): string =>
  mathml
    .replace(/<mfrac>/g, '[')
    .replace(/<\/mfrac>/g, ']')
    .replace(/<[^>]*>/g, '')
    .replace(/\u00a0/g, ' ')
    .replace(/\u200b/g, '|');

describe('formulas in symbols', () => {
  it('sets a quotient as a fraction, letters in italics', () => {
    expect(inSymbols('I', 'P / V')).toBe(math('<mi>I</mi><mo>=</mo><mfrac><mi>P</mi><mi>V</mi></mfrac>'));
  });

  it('sets powers, roots, logarithms, pi and indices', () => {
    expect(inSymbols('E', 'pow(V, 2)')).toBe(math('<mi>E</mi><mo>=</mo><msup><mi>V</mi><mn>2</mn></msup>'));
    expect(inSymbols('E', 'sqrt(P)')).toContain('<msqrt><mi>P</mi></msqrt>');
    expect(inSymbols('L', 'log10(P)')).toContain('<msub><mi>log</mi><mn>10</mn></msub>');
    expect(inSymbols('A', 'pi * R')).toContain('<mi>π</mi><mo>×</mo><mi>R</mi>');
    expect(inSymbols('A', 'I1 + I2')).toContain('<msub><mi>I</mi><mn>1</mn></msub>');
  });

  it('sets brackets where they are needed and nowhere else', () => {
    expect(heard(inSymbols('X', '(A + B) * C'))).toBe('X=(A+B)×C');
    expect(heard(inSymbols('X', 'A * B + C'))).toBe('X=A×B+C');
    expect(heard(inSymbols('X', 'A - (B - C)'))).toBe('X=A−(B−C)');
    expect(heard(inSymbols('X', 'A - B - C'))).toBe('X=A−B−C');
    expect(heard(inSymbols('X', 'pow(A + B, 2)'))).toBe('X=(A+B)2');
    expect(heard(inSymbols('X', '-(A + B)'))).toBe('X=−(A+B)');
  });

  it('writes one fraction for divisions in a row', () => {
    expect(inSymbols('T', 'C * U / 100 / I')).toContain(
      '<mfrac><mrow><mi>C</mi><mo>×</mo><mi>U</mi></mrow><mrow><mn>100</mn><mo>×</mo><mi>I</mi></mrow></mfrac>',
    );
  });

  it('writes the next listed size as a limit, and nothing where a list is used otherwise', () => {
    expect(heard(inSymbols('F', 'nextUp(P / V, LIST)'))).toBe('[PV]≤F');
    expect(inSymbols('F', '2 * nextUp(P / V, LIST)')).toBe('');
  });

  it('may break a long one before each relation, and before a sign where a stretch is too long for a phone', () => {
    const [line = '', ...more] = formulaMathML('X', parseExpression('A + B + C + D + E + F + G + H + I + J')).map(heard);
    expect(more).toEqual([]);
    expect(line).toBe('X|=A|+B|+C|+D|+E|+F|+G|+H|+I|+J');
  });
});

describe('formulas with the numbers put in', () => {
  it('end in the printed answer, with units upright', () => {
    const compiled = compiledFor('nf-current-from-power');
    const [line, ...more] = substitutedMathML(compiled, work(compiled, { P: 1150 }));
    expect(more).toEqual([]);
    expect(line).toBe(
      math(
        '<mi>I</mi><mo>=</mo><mfrac><mrow><mn>1150</mn><mtext>\u00a0W</mtext></mrow><mrow><mn>230</mn><mtext>\u00a0V</mtext></mrow></mfrac><mo>=</mo><mrow><mn>5</mn><mtext>\u00a0A</mtext></mrow>',
      ),
    );
  });

  it('say "about" when the answer was rounded', () => {
    const compiled = compiledFor('nf-current-from-power');
    expect(heard(substitutedMathML(compiled, work(compiled, { P: 1000 })).join(''))).toBe('I=[1000 W230 V]≈4.35 A');
  });

  it('bracket a quantity that is squared, and group the digits of large numbers', () => {
    const compiled = compiledFor('nf-capacitor-energy');
    const lines = substitutedMathML(compiled, work(compiled, { C: 100, V: 2000 }));
    expect(lines.map(heard)).toEqual(['E|=[0.5×100 microfarads×(2000 V)21\u2009000\u2009000]|=200 J']);
  });

  it('show the chosen size against the running current', () => {
    const compiled = compiledFor('nf-plug-fuse-choice');
    expect(heard(substitutedMathML(compiled, work(compiled, { P: 2050 })).join(''))).toBe('[2050 W230 V]≤10 A');
  });
});

const known = new Set(['math', 'mrow', 'mi', 'mn', 'mo', 'mtext', 'mfrac', 'msup', 'msub', 'msqrt']);

const attributesOf: Readonly<Record<string, readonly string[]>> = { math: [' displaystyle="true"'], mo: ['', ' form="infix"'] };

/** Elements that are known, closed in order, and no attributes but those. */
function isSound(mathml: string): boolean {
  const open: string[] = [];
  for (const [, slash, name = '', attributes = ''] of mathml.matchAll(/<(\/?)(\w+)([^>]*)>/g)) {
    if (!known.has(name) || !(slash === '' ? (attributesOf[name] ?? ['']) : ['']).includes(attributes)) return false;
    if (slash === '') open.push(name);
    else if (open.pop() !== name) return false;
  }
  return open.length === 0;
}

it('a value looked up is printed under the name the family gives it, with the unit of its list', () => {
  const compiled = compiledFor('nf-compliance-distance');
  const [formula = '', numbers = ''] = workingMathML(compiled, work(compiled, { E: 100, F: 145 })).map(heard);
  expect(formula).toBe('D=[ZF×EX]');
  expect(numbers).toMatch(/V\/m/);
});

describe('what is printed into a page', () => {
  it('escapes units, the only texts of a pack in it', () => {
    const unit = '<b>"&\'';
    const compiled = inventedCompiled({ inputs: { P: { label: 'p', unit, min: 100, max: 200, step: 100 } } });
    const lines = workingMathML(compiled, draw(compiled, 1)).join('');
    expect(lines).toContain('&lt;b&gt;&quot;&amp;&#39;');
    expect(lines).not.toContain('<b>');
  });

  // A size or fuse looked up beside another figure cannot be written as a formula: the steps say it.
  const inWordsOnly = ['nf-dc-cable-choice', 'nf-flex-rating'];

  it.each(variants)('is well-formed MathML of known elements for %s in %s', (id, _region, compiled) => {
    const lines = Array.from({ length: 20 }, (_, seed) => workingMathML(compiled, draw(compiled, seed))).flat();
    if (inWordsOnly.includes(id)) expect(lines).toEqual([]);
    else expect(lines.length).toBeGreaterThanOrEqual(40);
    expect(lines.filter((line) => !isSound(line))).toEqual([]);
  });
});
