import { fixed, plain } from './numbers.js';
import type { Value } from './functions.js';

/** A placeholder of a story or a step: {name}, {name|2} or {answer}. */
export interface Placeholder {
  raw: string;
  name: string;
  /** Decimals asked for; null for as many as needed. */
  places: number | null;
}

type Part = string | Placeholder;

const pattern = /\{([A-Za-z][A-Za-z0-9]*)(?:\|(\d))?\}/g;

/** A text cut at its placeholders. */
export function partsOf(text: string): Part[] {
  const parts: Part[] = [];
  let end = 0;
  for (const match of text.matchAll(pattern)) {
    const [raw, name = '', places] = match;
    parts.push(text.slice(end, match.index), { raw, name, places: places === undefined ? null : Number(places) });
    end = match.index + raw.length;
  }
  parts.push(text.slice(end));
  return parts.filter((part) => part !== '');
}

/** The placeholders of a text, and whether a brace is left over that belongs to none. */
export function placeholdersIn(text: string): { placeholders: Placeholder[]; strayBrace: boolean } {
  const parts = partsOf(text);
  return {
    placeholders: parts.filter((part): part is Placeholder => typeof part !== 'string'),
    strayBrace: parts.some((part) => typeof part === 'string' && /[{}]/.test(part)),
  };
}

/** Prints the numbers into a text. `answer` is the answer as the examiner prints it; an unknown name stays as it is written. */
export function filled(text: string, values: ReadonlyMap<string, Value>, answer: string): string {
  return partsOf(text)
    .map((part) => {
      if (typeof part === 'string') return part;
      if (part.name === 'answer') return answer;
      const value = values.get(part.name);
      if (typeof value !== 'number') return part.raw;
      return part.places === null ? plain(value) : fixed(value, part.places);
    })
    .join('');
}
