import Handlebars from 'handlebars';

/**
 * The few things a template may ask for beside choosing and repeating. All are pure: text in, safe HTML or text out.
 * Each runs in time proportional to the length of its text.
 */

const { escapeExpression, SafeString } = Handlebars;
type Safe = Handlebars.SafeString;

/** Unit symbols of the trade. Words ("ohms", "hours") may part from their number, so they are not here. */
const UNITS =
  'mW/cm² W/m² W/kg V/m A/m m/s km/h Ω/km Ω/m ohm/km mΩ kΩ MΩ Ω ' +
  'µA mA kA A µV mV kV V µW mW kW MW W VA kVA mAh Ah Wh kWh mJ kJ J kHz MHz GHz Hz ' +
  'dBm dBi dBd dBW dB µF nF pF mH mm² cm² m² µm mm cm km m ms s min h mg kg g kN N kPa Pa mbar bar ml l lx °C %';

const unitPattern = UNITS.split(' ')
  .flatMap((unit) => spellings(unit))
  .sort((a, b) => b.length - a.length)
  .join('|');

/** Micro and ohm each exist twice in Unicode (U+00B5 and U+03BC, U+03A9 and U+2126); people type both. */
function spellings(unit: string): string[] {
  if (unit.includes('µ')) return [unit, unit.replace('µ', 'μ')];
  if (unit.includes('Ω')) return [unit, unit.replace('Ω', '\u2126')];
  return [unit];
}

/**
 * A number or a range, one space of any kind, a unit that no letter, figure or power follows. A number never starts inside a word, another
 * number or a code such as FU-08, so a failed match costs its own length once and the whole text is read in straight time.
 */
const QUANTITY = new RegExp(
  String.raw`(?<![\p{L}\p{N}.,_–−-]|\d[\u202f\u00a0])([-−+±]?\d+(?:[.,\u202f\u00a0]\d+)*(?:[–-]\d+(?:[.,]\d+)*)?)[ \u00a0\u202f\u2009](${unitPattern})(?![\p{L}\p{N}_²³])`,
  'gu',
);

const HAS_FIGURE = /\d/;

/**
 * Escapes a text and keeps each value with its unit: "a 30 mA device" becomes `a <span class="q">30&#8239;mA</span> device`
 * (the sign here stands for U+202F itself). ISO 80000-1, 7.1: number, space, upright unit.
 */
export function quantities(text: string): Safe {
  const escaped = escapeExpression(text);
  if (!HAS_FIGURE.test(text)) return new SafeString(escaped);
  return new SafeString(escaped.replace(QUANTITY, '<span class="q">$1\u202f$2</span>'));
}

/** Our own pages, places on a page, and the web; nothing that runs, and no `//host` or `/\host` that leaves by a side door. */
const ADDRESS = /^(?:\/(?![/\\])|#|https?:\/\/)[^\s\p{Cc}\\]*$/u;

/** An address fit for `href` and `action`; anything else becomes `#`. The template escapes the result. */
export function address(text: string): string {
  return ADDRESS.test(text) ? text : '#';
}

const MATH_ELEMENT =
  'math|semantics|annotation|mrow|mi|mn|mo|mtext|mspace|mfrac|msqrt|mroot|msup|msub|msubsup|mover|munder|munderover|mtable|mtr|mtd|mstyle|mpadded|mphantom';
const MATH_ATTRIBUTE =
  'xmlns|display|class|width|height|depth|lspace|rspace|mathvariant|mathsize|stretchy|fence|separator|form|accent|largeop|movablelimits|linethickness|columnalign|displaystyle|scriptlevel|alttext|encoding|dir';
const MATH_TAG = new RegExp(String.raw`</?(?:${MATH_ELEMENT})(?: (?:${MATH_ATTRIBUTE})="[^"<>]*")*/?>`, 'g');

/**
 * Prints MathML made by the core as it is. It is the one way to print markup from page data, so it looks twice: a text that holds any
 * tag or attribute beyond plain MathML is shown as text.
 */
export function mathml(markup: string): Safe {
  const rest = markup.replace(MATH_TAG, '');
  return new SafeString(/[<>]/.test(rest) ? escapeExpression(markup) : markup);
}

const SVG_ELEMENT = 'svg|title|desc|g|path|line|polyline|polygon|rect|circle|ellipse|text|tspan|foreignObject|label';
const SVG_ATTRIBUTE =
  'viewBox|width|height|role|aria-label|aria-labelledby|aria-describedby|aria-hidden|id|class|for|d|points|transform|x|y|x1|y1|x2|y2|cx|cy|r|rx|ry|dx|dy';
const SVG_TAG = new RegExp(String.raw`</?(?:${SVG_ELEMENT})(?: (?:${SVG_ATTRIBUTE})="[^"<>]*")*/?>`, 'g');

/** Prints a drawing made by the core as it is, and looks as `mathml` does: anything beyond plain shapes and words is shown as text. */
export function drawing(markup: string): Safe {
  const rest = markup.replace(SVG_TAG, '');
  return new SafeString(/[<>]/.test(rest) ? escapeExpression(markup) : markup);
}

/** Our signs by name, from the symbols of `signs.svg`. Each is hidden from screen readers: the word beside it says the same. */
export function drawings(signsSvg: string): ReadonlyMap<string, Safe> {
  const found = new Map<string, Safe>();
  for (const [, name, group, box, shapes] of signsSvg.matchAll(
    /<symbol id="([\w-]+)" class="([\w-]+)" viewBox="([\d. -]+)">(.*)<\/symbol>/g,
  )) {
    found.set(String(name), new SafeString(`<svg class="${group}" viewBox="${box}" aria-hidden="true">${shapes}</svg>`));
  }
  return found;
}
