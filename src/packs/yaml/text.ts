import { codeName } from '../reading/finding.js';
import { yamlLimits } from './limits.js';

/** Something wrong with how a file is written, at an offset in its text. */
export interface TextFault {
  rule: string;
  offset: number;
  message: string;
}

/** `text` is null when the bytes are not text at all; otherwise every refused character has been replaced, so it is safe to parse. */
export interface DecodedText {
  text: string | null;
  placeAt: PlaceAt;
  faults: TextFault[];
}

/** Bytes to text: strict UTF-8, with or without a byte order mark, line ends of either kind, no invisible characters. */
export function decodeText(bytes: Uint8Array): DecodedText {
  if (startsWith(bytes, 0xff, 0xfe) || startsWith(bytes, 0xfe, 0xff)) {
    const message = 'The file is saved as UTF-16. Save it again with the encoding UTF-8.';
    return { text: null, placeAt: placesIn(''), faults: [{ rule: 'text-encoding', offset: 0, message }] };
  }
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return notUtf8(bytes);
  }
  const faults = findRefused(text);
  if (faults.length > 0) text = text.replace(refused, (letter) => (letter === '\r' ? '\n' : '?'));
  return { text, placeAt: placesIn(text), faults };
}

/** Controls, halves of characters, changes of writing direction, line separators, a byte order mark in mid-text, non-characters. */
const refused = /[\0-\x08\v\f\x0e-\x1f\x7f-\x9f\u2028-\u202e\u2066-\u2069\ufeff\ufffd-\uffff\ud800-\udfff]|\r(?!\n)/gu;

/** The refused characters of a text, the first twenty; of lone carriage returns only the first. */
export function findRefused(text: string): TextFault[] {
  const faults: TextFault[] = [];
  let carriageReturns = 0;
  for (const match of text.matchAll(refused)) {
    if (match[0] === '\r' && carriageReturns++ > 0) continue;
    faults.push({ rule: 'text-character', offset: match.index, message: wordsFor(match[0]) });
    if (faults.length === yamlLimits.faults) break;
  }
  return faults;
}

function wordsFor(letter: string): string {
  if (letter === '\r')
    return 'A line ends in an old way that is not taken (a carriage return alone). Save the file with line ends LF or CRLF.';
  if (letter === '\ufffd') return 'A character was lost here when the file was converted (there is a � in its place). Type it again.';
  return `There is an invisible character here that is not allowed, ${codeName(letter)}. Delete it, or type the place again.`;
}

function startsWith(bytes: Uint8Array, first: number, second: number): boolean {
  return bytes[0] === first && bytes[1] === second;
}

function notUtf8(bytes: Uint8Array): DecodedText {
  const end = firstBadByte(bytes);
  const before = new TextDecoder('utf-8').decode(bytes.subarray(0, end));
  const byte = (bytes[end] ?? 0).toString(16).padStart(2, '0');
  const message = `The file is not saved as UTF-8: the byte ${byte} here is no part of any character. Save the file again with the encoding UTF-8.`;
  return { text: null, placeAt: placesIn(before), faults: [{ rule: 'text-encoding', offset: before.length, message }] };
}

/** By halving: the longest beginning that decodes, an unfinished last character allowed. */
function firstBadByte(bytes: Uint8Array): number {
  let good = 0;
  let bad = bytes.length;
  while (good < bad) {
    const middle = Math.ceil((good + bad) / 2);
    if (decodes(bytes.subarray(0, middle), true)) good = middle;
    else bad = middle - 1;
  }
  while (good > 0 && !decodes(bytes.subarray(0, good), false)) good -= 1;
  return good;
}

function decodes(bytes: Uint8Array, stream: boolean): boolean {
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(bytes, { stream });
    return true;
  } catch {
    return false;
  }
}

export interface Position {
  line: number;
  column: number;
}

/** Line and column of an offset, both from 1; the column in UTF-16 units, as editors count. */
export type PlaceAt = (offset: number) => Position;

export function placesIn(text: string): PlaceAt {
  const starts = [0];
  for (let at = text.indexOf('\n'); at !== -1; at = text.indexOf('\n', at + 1)) starts.push(at + 1);
  return (offset) => {
    const wanted = Math.max(0, Math.min(offset, text.length));
    let low = 0;
    let high = starts.length - 1;
    while (low < high) {
      const middle = Math.ceil((low + high) / 2);
      if ((starts[middle] ?? 0) <= wanted) low = middle;
      else high = middle - 1;
    }
    return { line: low + 1, column: wanted - (starts[low] ?? 0) + 1 };
  };
}
