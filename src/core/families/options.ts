import type { Key, TellTale } from './accept.js';
import { plain, roundTo } from './numbers.js';
import type { Rounding } from './schema.js';
import { withUnit } from './units.js';

export interface DrawOption {
  value: number;
  text: string;
  /** The first mistake that leads here; null on the key, and on a listed value that no named mistake gives. */
  tellTale: string | null;
}

const bySize = (a: DrawOption, b: DrawOption): number => a.value - b.value;

/** The longest list that is offered whole. */
const wholeList = 6;
const offered = 4;

/**
 * The options of a choice: its whole printed list in order of size; of a long list the key, the named mistakes, and then the key's
 * neighbours until there are four.
 */
export function choiceOptions(key: Key, tellTales: readonly TellTale[], list: readonly number[]): DrawOption[] {
  const option = (value: number): DrawOption => ({
    value,
    text: withUnit(plain(value), key.unit),
    tellTale: value === key.value ? null : (tellTales.find((tellTale) => tellTale.value === value)?.name ?? null),
  });
  const all = [...new Set(list)].sort((a, b) => a - b);
  if (all.length <= wholeList) return all.map(option);
  const place = all.indexOf(key.value);
  const neighbours = [1, -1, 2, -2, 3, -3].flatMap((step) => all[place + step] ?? []);
  const chosen = [...new Set([key.value, ...tellTales.map((tellTale) => tellTale.value), ...neighbours])].slice(0, offered);
  return chosen.map(option).sort(bySize);
}

/** A wrong value printed as somebody who made the mistake would print it: as the story says, unless that leaves under two figures. */
function asTyped(value: number, round: Rounding): number {
  const rounded = roundTo(value, round);
  const kept = Math.abs(rounded - value) <= 0.05 * value;
  return kept ? rounded : roundTo(value, { mode: 'nearest', sf: 2 });
}

function plausible(draw: { key: Key; tellTales: readonly TellTale[] }, taken: readonly TellTale[], candidate: TellTale): boolean {
  const ratio = candidate.value / draw.key.value;
  if (ratio < 0.1 || ratio > 10) return false;
  const printed = (value: number): number => asTyped(value, draw.key.round);
  if (printed(candidate.value) === draw.key.shown) return false;
  return taken.every(
    (other) => Math.abs(other.value - candidate.value) > 0.03 * other.value && printed(other.value) !== printed(candidate.value),
  );
}

/** The first three usable mistakes in list order; when all lie on one side of the key, the last gives way to the first from the other side. */
function threeMistakes(draw: { key: Key; tellTales: readonly TellTale[] }): TellTale[] | null {
  const taken: TellTale[] = [];
  for (const candidate of draw.tellTales) {
    if (taken.length < 3 && plausible(draw, taken, candidate)) taken.push(candidate);
  }
  if (taken.length < 3) return null;
  const above = (tellTale: TellTale): boolean => tellTale.value > draw.key.value;
  const [first, second] = taken as [TellTale, TellTale];
  if (taken.every(above) || !taken.some(above)) {
    const other = draw.tellTales.find((candidate) => above(candidate) !== above(first) && plausible(draw, [first, second], candidate));
    if (other !== undefined) return [first, second, other];
  }
  return taken;
}

/**
 * Four options for a numeric draw, in order of size, for paper and for tutors' sheets: the key and three mistakes between a tenth and ten
 * times of it, more than 3 % apart, and apart in print. Null when this draw has too few such mistakes, and for a choice, which has its own list.
 */
export function fourOptions(draw: { kind: 'number' | 'choice'; key: Key; tellTales: readonly TellTale[] }): DrawOption[] | null {
  const mistakes = draw.kind === 'number' ? threeMistakes(draw) : null;
  if (mistakes === null) return null;
  const option = (value: number, tellTale: string | null): DrawOption => ({ value, text: withUnit(plain(value), draw.key.unit), tellTale });
  const wrong = mistakes.map((mistake) => option(asTyped(mistake.value, draw.key.round), mistake.name));
  return [option(draw.key.shown, null), ...wrong].sort(bySize);
}
