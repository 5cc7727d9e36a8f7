import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { address, drawings, mathml, quantities } from '../../src/web/view-helpers.js';

const html = (text: string): string => quantities(text).toString();
/** Value, U+202F, unit: ISO 80000-1, 7.1 asks for a space between the two and an upright unit. */
const q = (value: string, unit: string): string => `<span class="q">${value}\u202f${unit}</span>`;

describe('quantities', () => {
  it.each([
    ['a 30 mA RCD', `a ${q('30', 'mA')} RCD`],
    ['It rests 4.8 m up.', `It rests ${q('4.8', 'm')} up.`],
    ['2 or 2.2 kW, 230 V', `2 or ${q('2.2', 'kW')}, ${q('230', 'V')}`],
    ['flex of 0.75 mm² carries 6 A', `flex of ${q('0.75', 'mm²')} carries ${q('6', 'A')}`],
    ['10 W/m² and 28 V/m', `${q('10', 'W/m²')} and ${q('28', 'V/m')}`],
    ['a loss of −3 dB', `a loss of ${q('−3', 'dB')}`],
    ['fuses of 3–13 A', `fuses of ${q('3–13', 'A')}`],
    ['47 kΩ, or 5 µA', `${q('47', 'kΩ')}, or ${q('5', 'µA')}`],
    ['about 50 % at 20 °C', `about ${q('50', '%')} at ${q('20', '°C')}`],
    ['1,500 W', q('1,500', 'W')],
  ])('keeps value and unit of "%s" together', (text, expected) => {
    expect(html(text)).toBe(expected);
  });

  it.each([
    'FU-08 A question',
    'Class 2A equipment',
    'In 1998 some clubs met',
    'a 10 metre mast',
    '30 mAx',
    'E7 V is a code',
    'the 3 Watts',
    '10 m²³',
  ])('leaves "%s" as it is, for it holds no value with a unit symbol', (text) => {
    expect(html(text)).toBe(text);
  });

  it('takes every kind of single space between value and unit, and prints U+202F', () => {
    for (const space of [' ', '\u00a0', '\u202f', '\u2009']) expect(html(`5${space}A`)).toBe(q('5', 'A'));
  });

  it('reads both signs that Unicode has for micro and for ohm', () => {
    expect(html('5 \u00b5A 5 \u03bcA')).toBe(`${q('5', '\u00b5A')} ${q('5', '\u03bcA')}`);
    expect(html('5 \u03a9 5 \u2126')).toBe(`${q('5', '\u03a9')} ${q('5', '\u2126')}`);
  });

  it('escapes markup, quotes and ampersands, also beside a value', () => {
    expect(html('<img src=x onerror="a()"> 5 A & \'7 V\'')).toBe(
      `&lt;img src&#x3D;x onerror&#x3D;&quot;a()&quot;&gt; ${q('5', 'A')} &amp; &#x27;${q('7', 'V')}&#x27;`,
    );
  });

  it('adds nothing but its own span to any text, and loses nothing but the kind of a space', () => {
    const piece = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.constantFrom('3', '0.5', ' ', 'A', ' mA', '<b>', '&', '"', '–', '-', '.', ',', 'Ω', '\u202f', '&#x27;'),
    );
    const plain = (text: string): string => text.replace(/[ \u00a0\u202f\u2009]/g, ' ');
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 30 }), (pieces) => {
        const text = pieces.join('');
        const bare = html(text).replace(/<span class="q">([^<>]*)<\/span>/g, '$1');
        expect(bare).not.toMatch(/[<>"']/);
        const entities: Record<string, string> = {
          '&amp;': '&',
          '&lt;': '<',
          '&gt;': '>',
          '&quot;': '"',
          '&#x27;': "'",
          '&#x60;': '`',
          '&#x3D;': '=',
        };
        expect(plain(bare.replace(/&(?:amp|lt|gt|quot|#x27|#x60|#x3D);/g, (entity) => entities[entity] ?? ''))).toBe(plain(text));
      }),
      { seed: 20261125, numRuns: 500 },
    );
  });

  it.each([
    ['one endless number', '1'.repeat(200_000)],
    ['numbers joined by points', '1.'.repeat(100_000)],
    ['numbers joined by dashes', '1-'.repeat(100_000)],
    ['values without a unit', '12 '.repeat(70_000)],
    ['units that are almost right', '12 mAx'.repeat(35_000)],
  ])('reads %s of 200,000 characters in straight time', (_what, text) => {
    const start = performance.now();
    html(text);
    // Straight time is some 20 ms on a slow machine; squared time would be minutes.
    expect(performance.now() - start).toBeLessThan(2000);
  });
});

describe('address', () => {
  it.each(['/', '/study/rounds?x=1#y', '#answer', 'https://example.org/a', 'http://192.0.2.10:3000/return'])('lets %s through', (text) => {
    expect(address(text)).toBe(text);
  });

  it.each([
    'javascript:alert(1)',
    'JavaScript:alert(1)',
    ' javascript:alert(1)',
    'java\tscript:alert(1)',
    'data:text/html,x',
    'vbscript:x',
    '//example.org/',
    '/\\example.org/',
    '/\t/example.org/',
    'ftp://example.org/',
    'study/rounds',
    '',
  ])('turns %j into #', (text) => {
    expect(address(text)).toBe('#');
  });
});

describe('mathml', () => {
  const formula =
    '<math display="block"><mrow><mi>I</mi><mo>=</mo><mfrac><mi>P</mi><mi>U</mi></mfrac><mspace width="0.2em"/><mtext>a &lt; b</mtext></mrow></math>';

  it('prints MathML as it is', () => {
    expect(mathml(formula).toString()).toBe(formula);
  });

  it.each([
    '<img src="x" onerror="a()">',
    '<math><script>a()</script></math>',
    '<math onclick="a()"><mi>x</mi></math>',
    '<math href="javascript:a()"><mi>x</mi></math>',
    '<mi style="x">a</mi>',
    '<mi class="a"b">x</mi>',
    '<math><mi>a</mi><!-- --></math>',
    '<mi',
    'a < b',
  ])('shows %j as text', (markup) => {
    const printed = mathml(markup).toString();
    expect(printed).not.toContain('<');
    expect(printed).toContain('&lt;');
  });

  it('looks through 200,000 characters of broken markup in straight time', () => {
    const start = performance.now();
    mathml('<mi class="'.repeat(18_000));
    mathml('<mi class="a"'.repeat(15_000));
    expect(performance.now() - start).toBeLessThan(2000);
  });
});

describe('drawings', () => {
  it('makes a symbol into a drawing of its own, hidden from screen readers', () => {
    const found = drawings(
      '<svg>\n<symbol id="yes" class="sign" viewBox="0 0 40 40"><path d="M0 0"/></symbol>\n<symbol id="b" class="tol" viewBox="-1 0 5.5 2"><g/></symbol>\n</svg>',
    );
    expect([...found.keys()]).toEqual(['yes', 'b']);
    expect(found.get('yes')?.toString()).toBe('<svg class="sign" viewBox="0 0 40 40" aria-hidden="true"><path d="M0 0"/></svg>');
  });
});
