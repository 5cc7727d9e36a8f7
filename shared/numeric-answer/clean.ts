/**
 * Brings what keyboards, phones and copied pages produce to plain characters: digits of any width, the several minus signs,
 * quotation marks, spaces, ohm, micro and degree signs, written-out fractions and raised figures.
 */
const fractions: Readonly<Record<string, string>> = {
  '½': '1/2',
  '⅓': '1/3',
  '⅔': '2/3',
  '¼': '1/4',
  '¾': '3/4',
  '⅕': '1/5',
  '⅖': '2/5',
  '⅗': '3/5',
  '⅘': '4/5',
  '⅙': '1/6',
  '⅚': '5/6',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
  '⅒': '1/10',
};
const raised = '⁰¹²³⁴⁵⁶⁷⁸⁹';
const unraise = (run: string): string =>
  `^${[...run].map((sign) => (sign === '⁻' ? '-' : sign === '⁺' ? '+' : String(raised.indexOf(sign)))).join('')}`;

/** Plain form of a typed text; raised figures become ^2, a written fraction 1/2. Linear in the length of the text. */
export function cleanText(text: string): string {
  let plain = text;
  if (!/^[\x20-\x7e]*$/.test(plain)) {
    plain = plain
      .replace(/[\u200b-\u200f\u202a-\u202e\u2060-\u2069\ufeff\u00ad]/g, '')
      .replace(/[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞⅒]/g, (sign) => ` ${fractions[sign] ?? ''}`)
      .replace(/[⁰¹²³⁴⁵⁶⁷⁸⁹⁺⁻]+/g, unraise)
      .replace(/[º˚]/g, '°')
      .replace(/[’‘′ʹ´`]/g, "'")
      .replace(/[”“″ʺ]/g, '"')
      .normalize('NFKC')
      .replace(/[\u2010-\u2015\u2212\u02d7\u2043]/g, '-')
      .replace(/[×✕✖]/g, 'x')
      .replace(/[⋅∙•‧]/g, '·')
      .replace(/[⁄∕]/g, '/')
      .replace(/μ/g, 'u');
  }
  return plain
    .replace(/''/g, '"')
    .replace(/[()[\]{}\s]+/g, ' ')
    .trim();
}
