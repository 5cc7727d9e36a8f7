/** The words people put round a number, and the few they put in place of a sign or a fraction. */

const fillers = new Set(
  'approx approximately approximate about around roughly circa ca c nearly almost say is it its equals answer the ans i think get got make me'.split(
    ' ',
  ),
);
const limitSigns = /^[^\d]*[<>≤≥±]/;
const limitWords =
  /^(?:\+\/?-|(?:less|more|greater|fewer|not|at|up|over|under|above|below|between|from|within|max|min|minimum|maximum)\b)/i;
const limitsBehind =
  /(?:^| )(?:(?:or|and) (?:more|less|over|under|above|below)|max(?:imum)?|minimum|at (?:most|least)|or (?:higher|lower|greater))\.?$|^[+-]$/i;

/** Whether a sign before the number makes a limit or a range of it: "<= 5", "I > 5", "±2". To be asked before labels go. */
export const hasLimitSign = (plain: string): boolean => limitSigns.test(plain);

/** Whether a text without its label names a limit or a range: "at least 5", "between 5 and 6". */
export const isLimit = (plain: string): boolean => limitWords.test(plain);

/** Whether what follows a number makes a limit of it: "13 A max", "5 or more". */
export const endsAsLimit = (rest: string): boolean => limitsBehind.test(rest);

/** Drops "V =", "answer:", "approximately", "~" and the like in front of the number, and turns "minus" into its sign. */
export function withoutLabel(plain: string): string {
  // Most people type a number and no more.
  if (/^\d/.test(plain)) return withoutEnd(plain);
  let rest = plain.replace(/^(?:(?:[^\d=:≈~≃]*[=:≈~≃] ?)+|[a-z]\w{0,11} ?[=:≈~≃] ?)/i, '').replace(/^[=:≈~≃ ]+/, '');
  for (;;) {
    const word = /^([a-z]+)(?:['.,]+[a-z]?)? ?/i.exec(rest);
    if (word === null || !fillers.has((word[1] ?? '').toLowerCase())) break;
    // "approx.5" may be 5 or 0.5, and is left to be asked about.
    if (/[.,]$/.test(word[0]) && /^\d/.test(rest.slice(word[0].length))) break;
    rest = rest.slice(word[0].length).replace(/^[=:≈~≃ ]+/, '');
  }
  return withoutEnd(withSign(rest));
}

const withoutEnd = (text: string): string => (/[ .,;!?]$/.test(text) ? text.replace(/[ .,;!?]+$/, '') : text);

const withSign = (text: string): string => text.replace(/^(minus|negative|plus) ?(?=[\d.,])/i, (word) => (/^plus/i.test(word) ? '' : '-'));

const parts: Readonly<Record<string, string>> = { half: '1/2', third: '1/3', quarter: '1/4', 'three quarter': '3/4', 'two third': '2/3' };

/** "4 and a half hours", "4 & three quarters", "4 and 1/2": the fraction in figures, as in "4 1/2 hours". */
export function fractionsInFigures(plain: string): string {
  if (!/\d ?(?:and|&) /i.test(plain)) return plain;
  return plain
    .replace(/(\d) ?(?:and|&) (?:a |one )?(half|third|quarter|three[ -]quarter|two[ -]third)s?\b/i, (_all, digit: string, part: string) => {
      return `${digit} ${parts[part.toLowerCase().replace('-', ' ')] ?? ''}`;
    })
    .replace(/(\d) ?(?:and|&) (?=\d+ ?\/ ?\d)/i, '$1 ');
}
