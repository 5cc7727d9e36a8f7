import type { Region } from './syllabus.js';

/** A calculation with the numbers of a draw, in the calculation's own units. */
export interface CalculatorLink {
  id: string;
  inputs: Readonly<Record<string, string | number | readonly number[]>>;
}

/** Where a draw's numbers can be worked again, and under what name; null when its family names no calculation. */
export function calculatorOf(draw: {
  calculator: (CalculatorLink & { title: string }) | null;
  region: Region;
}): { href: string; title: string } | null {
  if (draw.calculator === null) return null;
  return { href: calculatorAddress(draw.calculator, draw.region), title: draw.calculator.title };
}

/** The page of a calculator with these numbers typed in. */
function calculatorAddress({ id, inputs }: CalculatorLink, region: Region): string {
  const given = Object.entries(inputs).flatMap(([name, value]) => [value].flat().map((one) => [name, String(one)] as const));
  const query = [...given, ['region', region] as const].map(([name, value]) => `${encodeURIComponent(name)}=${encodeURIComponent(value)}`);
  return `/calculators/${id}?${query.join('&')}`;
}
