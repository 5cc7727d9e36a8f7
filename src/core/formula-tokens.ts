/** The words and signs of a line of working, as `formula-line.ts` reads them. */
export interface Token {
  kind: 'number' | 'quantity' | 'name' | 'sign' | 'open' | 'close' | 'root' | 'power' | 'raised' | 'over';
  text: string;
  unit: string;
}

const space = '\\u202f';
const figures = `\\d{1,3}(?:${space}\\d{3})+(?:\\.\\d+)?|\\d+(?:\\.\\d+)?`;
const patterns: readonly (readonly [Token['kind'], RegExp])[] = [
  [
    'quantity',
    new RegExp(
      `([-−]?(?:${figures}))(?:${space}×${space}10[⁰¹²³⁴⁵⁶⁷⁸⁹⁻]+)?${space}((?:[A-Za-zµΩ°%]|dB\\(\\w\\))[A-Za-zµΩ°%²³/]*(?:\\([AC]\\))?)`,
      'y',
    ),
  ],
  ['quantity', new RegExp(`([-−]?(?:${figures}))(°)`, 'y')],
  // A plain space stands between number and unit only in formulas, and only for units that are no symbol there.
  ['quantity', /(\d+(?:\.\d+)?) (min|h|s|mW|mA|dB|km|ft|MHz|kHz|%)(?![A-Za-z\d_])/y],
  ['number', new RegExp(`(?:${figures})(?:${space}×${space}10[⁰¹²³⁴⁵⁶⁷⁸⁹⁻]+)?`, 'y')],
  ['number', /½/y],
  ['name', /[A-Za-zα-ωΑ-Ω]+[₀-₉\d]*(?:_[A-Za-z\d]+)*/y],
  ['name', /…/y],
  ['raised', /[²³]/y],
  ['root', /√/y],
  ['power', /\^/y],
  ['over', /\//y],
  ['open', /\(/y],
  ['close', /\)/y],
  ['sign', /<=|>=|[=≈≤≥<>×·+−,-]/y],
];

export function tokensOf(text: string): Token[] | null {
  const tokens: Token[] = [];
  let at = 0;
  while (at < text.length) {
    if (text[at] === ' ') {
      at += 1;
      continue;
    }
    const found = firstMatch(text, at);
    if (found === null) return null;
    tokens.push(found.token);
    at += found.length;
  }
  return tokens;
}

function firstMatch(text: string, at: number): { token: Token; length: number } | null {
  for (const [kind, pattern] of patterns) {
    pattern.lastIndex = at;
    const match = pattern.exec(text);
    if (match === null) continue;
    const unit = kind === 'quantity' ? (match[2] ?? '') : '';
    return { token: { kind, text: unit === '' ? match[0] : match[0].slice(0, -unit.length).trimEnd(), unit }, length: match[0].length };
  }
  return null;
}
