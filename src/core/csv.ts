/** Tables as spreadsheets take them: RFC 4180, and no cell that a spreadsheet would run as a formula. */

/** @returns the rows as one text, each ended by CR LF */
export const writeCsv = (rows: readonly (readonly string[])[]): string =>
  rows.map((cells) => `${cells.map(cellOf).join(',')}\r\n`).join('');

/** What a spreadsheet would take for a formula, in signs of either width, becomes text by an apostrophe; a true number stays one. */
function cellOf(text: string): string {
  const formula = /^[=+\-@＝＋－＠\t\r\n]/.test(text) && !/^[+-]?\d+(\.\d+)?$/.test(text);
  const safe = formula ? `'${text}` : text;
  return /[",;\t\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
