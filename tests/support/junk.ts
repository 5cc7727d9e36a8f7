import fc from 'fast-check';

/** What strangers send in place of what was meant. */

/** Texts that have broken programs before: paths, queries, markup, templates, numbers out of reach, signs that are not there. */
export const junk: readonly string[] = [
  '',
  ' ',
  '\0',
  '..',
  '../../etc/passwd',
  '..\\..\\windows\\win.ini',
  "' OR 1=1; DROP TABLE person; --",
  '$1',
  '%',
  '_',
  '\\',
  '<script>alert(1)</script>',
  '"><img src=x onerror=alert(1)>',
  '{{constructor.constructor}}',
  '__proto__',
  'constructor',
  'toString',
  '-1',
  '0',
  '1',
  '007',
  '1e309',
  '2147483648',
  '9'.repeat(400),
  '2026-02-30',
  '99999-01-01T25:61',
  'null',
  'true',
  '[]',
  '\u202e\u200b\ufeff',
  '\ud800',
  '½㎒𝄞',
  'line\r\nset-cookie: a=b',
  'x'.repeat(101),
  'x'.repeat(3000),
  '00000000-0000-4000-8000-000000000000',
];

/** More of the kind, always the same ones. */
export const chance = (count: number, seed: number): string[] =>
  fc.sample(
    fc.oneof(fc.string({ unit: 'binary', maxLength: 40 }), fc.string({ maxLength: 200 }), fc.string({ unit: 'grapheme', maxLength: 20 })),
    {
      seed,
      numRuns: count,
    },
  );

/** A text as a part of an address; halves of letters are what a careless program sends for them. */
export const inAddress = (text: string): string => encodeURIComponent(Buffer.from(text).toString());

/** Words that stand in no page of ours: of paths, stacks, queries and the insides of values. */
const traces =
  /node_modules|file:\/\/|\bat (?:async )?[\w.<>]+ \(|\.[jt]s:\d+|\bSELECT\b|\bINSERT INTO\b|\bpg_|invalid input syntax|syntax error|violates|ZodError|TypeError|RangeError|\[object \w+\]|\bundefined\b/;

/** The first trace of the program's insides in a text, with what stands round it; null when there is none. */
export function traceIn(text: string): string | null {
  const found = traces.exec(text);
  return found === null ? null : text.slice(Math.max(0, found.index - 60), found.index + 80);
}
