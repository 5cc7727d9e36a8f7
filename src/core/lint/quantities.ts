/** Numbers with units in options, as far as two options can be compared. */

export interface Amount {
  value: number;
  /** The unit as written, small and capital letters kept; empty for a plain number. */
  unit: string;
}

const prefixes: Readonly<Record<string, number>> = { µ: 1e-6, m: 1e-3, k: 1e3, M: 1e6, G: 1e9 };
const baseUnits = new Set(['A', 'V', 'W', 'Ω', 'Hz', 'F', 'H', 'J', 'Ah', 'Wh', 'VA']);
/** Metres and seconds have prefixes of their own, since "m" is one and the other. */
const others: Readonly<Record<string, [number, string]>> = {
  mm: [1e-3, 'm'],
  cm: [1e-2, 'm'],
  m: [1, 'm'],
  km: [1e3, 'm'],
  ms: [1e-3, 's'],
  s: [1, 's'],
  min: [60, 's'],
  h: [3600, 's'],
};

const amount = /^([-−+]?\d[\d,\u202f\u00a0 ]*(?:\.\d+)?)\s*([A-Za-zµμΩ°%²/]*)$/u;

/** A text that is one number with or without a unit, in base units where it has a known one; null for anything else. */
export function readAmount(text: string): Amount | null {
  const found = text.length > 40 ? null : amount.exec(text.trim());
  if (found === null) return null;
  const value = Number((found[1] ?? '').replace(/[,\u202f\u00a0 ]/g, '').replace('−', '-'));
  const unit = (found[2] ?? '').replace('μ', 'µ');
  if (!Number.isFinite(value)) return null;
  const other = Object.hasOwn(others, unit) ? others[unit] : undefined;
  if (other) return { value: value * other[0], unit: other[1] };
  const prefix = prefixes[unit.charAt(0)];
  if (prefix !== undefined && baseUnits.has(unit.slice(1))) return { value: value * prefix, unit: unit.slice(1) };
  return { value, unit };
}

/** From one number to another; `open` ends do not belong to it. */
export interface Span {
  from: number;
  to: number;
  unit: string;
}

const number = String.raw`([-−]?\d+(?:[.,]\d+)?)\s*([A-Za-zµΩ°%]*)`;
const spans: [RegExp, (a: number, b: number) => [number, number]][] = [
  [new RegExp(`^(?:from )?${number}\\s*(?:to|[-–])\\s*${number}$`, 'iu'), (a, b) => [a, b]],
  [new RegExp(`^between ${number}\\s*and\\s*${number}$`, 'iu'), (a, b) => [a, b]],
  [new RegExp(`^(?:below|under|less than|up to|at most|no more than)\\s+${number}$`, 'iu'), (a) => [-Infinity, a]],
  [new RegExp(`^(?:above|over|more than|at least|from|no less than)\\s+${number}(?: or more| upwards)?$`, 'iu'), (a) => [a, Infinity]],
  [new RegExp(`^${number} or (?:less|fewer|below)$`, 'iu'), (a) => [-Infinity, a]],
  [new RegExp(`^${number} or (?:more|above)$`, 'iu'), (a) => [a, Infinity]],
];

/** A text that is one range ("below 5 m", "5 m to 10 m", "at least 10 m"); null for anything else. */
export function readSpan(text: string): Span | null {
  if (text.length > 60) return null;
  const plain = text.trim().replace(/\.$/, '');
  for (const [pattern, ends] of spans) {
    const found = pattern.exec(plain);
    if (found === null) continue;
    const [, a = '', unitA = '', b = '', unitB = ''] = found;
    const toNumber = (digits: string): number => Number(digits.replace('−', '-').replace(',', '.'));
    const [from, to] = ends(toNumber(a), toNumber(b));
    return { from, to, unit: unitB || unitA };
  }
  return null;
}
