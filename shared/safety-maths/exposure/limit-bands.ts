import { out, put } from '../working.js';

/** Limits that change with frequency: a table has bands, and a band has a formula for each figure. */

/** A figure as c × f^power, with f in MHz unless told otherwise. */
export interface Law {
  readonly c: number;
  readonly power: number;
  readonly per: 'MHz' | 'GHz';
}
export const law = (c: number, power = 0, per: Law['per'] = 'MHz'): Law => ({ c, power, per });

interface Span {
  /** MHz. Where two bands share an edge, the edge belongs to the lower one. */
  readonly from: number;
  readonly to: number;
}
/** A band of limits: E in V/m, H in A/m, S in W/m²; null where the table sets none. */
export interface LimitBand extends Span {
  readonly electric: Law | null;
  readonly magnetic: Law | null;
  readonly density: Law | null;
}

/** One band of limits, as a line of a table. */
export const limits = (from: number, to: number, electric: Law | null, magnetic: Law | null, density: Law | null): LimitBand => ({
  from,
  to,
  electric,
  magnetic,
  density,
});

/** The band of a frequency in MHz. The inputs' limits keep the frequency inside the table, so the last band takes what is left. */
export function bandAt<B extends Span>(bands: readonly [B, ...B[]], frequency: number): B {
  return bands.find(({ to }) => frequency <= to) ?? bands.at(-1) ?? bands[0];
}

export const valueOf = ({ c, power, per }: Law, frequency: number): number => c * (per === 'GHz' ? frequency / 1000 : frequency) ** power;

/** The right side of a formula, with `f` for the frequency: "900 / f²", "1.375 × √f", "f / 150". */
export function lawText({ c, power }: Law, f = 'f'): string {
  const share = 1 / c;
  if (power === 0) return put(c, '');
  if (power === 1) return Math.abs(share - Math.round(share)) < 1e-9 ? `${f} / ${put(share, '')}` : `${put(c, '')} × ${f}`;
  if (power === 0.5) return `${put(c, '')} × √${f}`;
  const size = Math.abs(power);
  const raised = size === 1 ? f : size === 2 ? `${f}²` : `${f}^${put(size, '')}`;
  return `${put(c, '')} ${power < 0 ? '/' : '×'} ${raised}`;
}

interface Figures {
  readonly electric_field: number | null;
  readonly magnetic_field: number | null;
  readonly power_density: number | null;
}

/** The limits at a frequency in MHz, and the steps that lead to them. */
export function limitsAt(bands: readonly [LimitBand, ...LimitBand[]], frequency: number): { result: Figures; steps: string[] } {
  const band = bandAt(bands, frequency);
  const at = (one: Law | null): number | null => (one === null ? null : valueOf(one, frequency));
  return {
    result: { electric_field: at(band.electric), magnetic_field: at(band.magnetic), power_density: at(band.density) },
    steps: [
      spanStep(band, frequency),
      limitStep('Electric field: E', band.electric, frequency, 'V/m'),
      limitStep('Magnetic field: H', band.magnetic, frequency, 'A/m'),
      limitStep('Power density: S', band.density, frequency, 'W/m²'),
    ].filter((step) => step !== ''),
  };
}

export const spanStep = ({ from, to }: Span, frequency: number): string =>
  from === to
    ? `${put(frequency, 'MHz')} has a row of its own in the table.`
    : `${put(frequency, 'MHz')} lies in the row from ${put(from, 'MHz')} to ${put(to, 'MHz')}.`;

function limitStep(name: string, one: Law | null, frequency: number, unit: string): string {
  if (one === null) return `${name} has no limit in this row.`;
  const value = out(valueOf(one, frequency), unit);
  if (one.power === 0) return `${name} = ${value}, the same all through this row`;
  const given = one.per === 'GHz' ? frequency / 1000 : frequency;
  return `${name} = ${lawText(one)} = ${lawText(one, put(given, ''))} = ${value} (f in ${one.per})`;
}

/** What the tables of ICNIRP 2020 for heating leave out, for a frequency in MHz. */
export const nerveSteps = (frequency: number): string[] =>
  frequency > 10 ? [] : ['Up to 10 MHz, levels against effects on nerves hold as well, at every moment; they can be lower than these.'];

/** Who may use which limits. */
export const publicStep =
  'Family, neighbours and visitors come under the public limits; the higher ones are for people trained for the work.';
