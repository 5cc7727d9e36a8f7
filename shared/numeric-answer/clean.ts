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
/** Noughts of the scripts whose digits phones offer; the other nine follow each in the table of characters (Unicode, general category Nd). */
const noughts = '٠۰०০੦૦୦௦౦೦൦๐';
const digits = new Map(
  [...noughts].flatMap((nought) => [...'0123456789'].map((d) => [String.fromCharCode(nought.charCodeAt(0) + Number(d)), d])),
);
/** Cyrillic and Greek letters that look like a Latin one and stand for nothing else in a unit; В (volt) and С (second) do. */
const alike = 'АаЕеКкМмОоРрТтХхΑΕΚΜΟ';
const latin = 'AaEeKkMmOoPpTtXxAEKMO';
const raised = '⁰¹²³⁴⁵⁶⁷⁸⁹';
const unraise = (run: string): string =>
  `^${[...run].map((sign) => (sign === '⁻' ? '-' : sign === '⁺' ? '+' : String(raised.indexOf(sign)))).join('')}`;

/** Digits of other scripts, the Arabic decimal sign, group sign and per cent sign, and letters that look Latin. */
const inLatin = (text: string): string =>
  text
    .replace(/[^\P{Nd}0-9]/gu, (digit) => digits.get(digit) ?? digit)
    .replace(/[٫٬٪]/g, (sign) => (sign === '٫' ? '.' : sign === '٬' ? "'" : '%'))
    .replace(/[АаЕеКкМмОоРрТтХхΑΕΚΜΟ]/g, (letter) => latin.charAt(alike.indexOf(letter)));

/** Plain form of a typed text; raised figures become ^2, a written fraction 1/2. Linear in the length of the text. */
export function cleanText(text: string): string {
  let plain = text;
  if (!/^[\x20-\x7e]*$/.test(plain)) {
    plain = plain
      // Not U+202E, which shows the figures after it backwards: such a text is asked about.
      .replace(/[\u200b-\u200f\u202a-\u202d\u2060-\u2069\ufeff\u00ad]|\ufe0e|\ufe0f|\u20e3/g, '')
      .replace(/\p{Cc}/gu, ' ')
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
      .replace(/μ/g, 'u')
      .replace(/[èéêë]/gi, 'e');
    if (/[\u0370-\u0eff]/.test(plain)) plain = inLatin(plain);
  }
  if (plain.includes("''")) plain = plain.replace(/''/g, '"');
  if (/[([{]/.test(plain)) plain = plain.replace(/[([{] ?[~≈=+-]? ?[.,]?\d/g, keptApart);
  if (/[()[\]{}\s]/.test(plain)) plain = plain.replace(/[()[\]{}\s]+/g, ' ').trim();
  return /^["']/.test(plain) ? plain.replace(/^(["'])(.*)\1$/, '$2') : plain;
}

/** "1.5 h (90 min)" says it twice: the second number must not be taken for a part of the first. But 10^(-3) is one number. */
function keptApart(bracketed: string, at: number, text: string): string {
  const before = text.slice(0, at).trimEnd();
  return /\d/.test(before) && !/[\^*x·]$/i.test(before) ? `;${bracketed}` : bracketed;
}
