import type { Region } from '../../../src/core/syllabus.js';

type ByHand = (inputs: Record<string, number>, region: Region) => number;

const mains = (region: Region): number => (region === 'na' ? 120 : 230);

/** A ratio from so many decibels, and decibels from a ratio, by way of natural logarithms. */
const ratio = (decibels: number): number => Math.exp((decibels * Math.LN10) / 10);
const decibels = (times: number): number => (10 * Math.log(times)) / Math.LN10;

/** The r.m.s. field (V/m) of a power density (W/m²): the impedance of free space is 120 pi ohms. */
const fieldOf = (density: number): number => Math.sqrt(density * 120 * Math.PI);

/** The power density (W/m²) of an EIRP spread over a sphere of that radius. */
const densityAt = (eirp: number, metres: number): number => eirp / (4 * Math.PI * metres * metres);

/** The radius of the sphere over which an EIRP thins out to that power density. */
const radiusFor = (eirp: number, density: number): number => Math.sqrt(eirp / density / Math.PI) / 2;

/** The public limits printed in the questions, by the band in MHz: W/m² in North America, else V/m. */
const higherBands: Record<number, number> = { 435: 28.7, 1297: 49.5 };
const publicField = (megahertz: number): number => higherBands[megahertz] ?? 27.7;
const publicDensity = (megahertz: number): number => (megahertz === 435 ? 2.9 : 2);

/** The slope length of one out to four up, for each metre of height. */
const slope = Math.hypot(1, 0.25);

/** Millionths as whole numbers, so that a sum just at a limit is not lost to binary fractions. */
const whole = (value: number): number => Math.round(value * 1e6);

/** Each answer by hand, another way than the pack's formula where there is one. */
export const byHand: Record<string, ByHand> = {
  // Mains
  'nf-current-from-power': ({ P = 0 }, region) => P / mains(region),
  'nf-power-from-volts-and-amps': ({ I = 0, V = 0 }) => V / (1 / I),
  'nf-resistance-from-meter': ({ I = 0, V = 0 }) => (V * V) / (V * I),
  'nf-plug-fuse-choice': ({ P = 0 }, region) => {
    if (region === 'na') return [15, 20, 25, 30].find((breaker) => 0.8 * breaker * 120 >= P) ?? NaN;
    return (region === 'eu' ? [6, 10, 13, 16] : [3, 5, 10, 13]).find((fuse) => fuse * 230 >= P) ?? NaN;
  },
  'nf-flex-rating': ({ P = 0 }) => {
    const fuse = [3, 5, 13].find((each) => each * 230 >= P) ?? NaN;
    const flexes: [number, number][] = [
      [0.5, 3],
      [0.75, 6],
      [1, 10],
      [1.25, 13],
      [1.5, 15],
    ];
    return flexes.find(([, rated]) => rated >= fuse)?.[0] ?? NaN;
  },
  'nf-fuse-headroom': ({ F = 0, Q = 0 }, region) => mains(region) * (F * (region === 'na' ? 0.8 : 1) - Q / mains(region)),
  'nf-extension-total': ({ A = 0, B = 0, C = 0 }, region) => A / mains(region) + B / mains(region) + C / mains(region),
  'nf-coil-drum': ({ W = 0, Q = 0 }, region) => W * mains(region) - Q,
  'nf-generator-load': ({ A = 0, B = 0, C = 0, G = 0 }) => (A / G + B / G + C / G) * 100,
  // The element keeps the resistance it has at its rated 120 V.
  'nf-wrong-supply-power': ({ P = 0 }) => (230 * 230) / ((120 * 120) / P),
  'nf-body-current': ({ R = 0 }, region) => mains(region) / (R / 1000),
  'nf-fault-current-to-earth': ({ Q = 0, R = 0 }, region) => mains(region) / (R + Q),
  'nf-leakage-sum': ({ A = 0, B = 0, M = 0, N = 0 }) => B * N + A * M,

  // Low voltage and batteries
  'nf-soldering-iron-current': ({ P = 0, V = 0 }) => Math.exp(Math.log(P) - Math.log(V)),
  'nf-radio-input-current': ({ N = 0, P = 0 }) => P / 13.8 / (N / 100),
  // Out and back: twice the length of one wire.
  'nf-dc-volt-drop': ({ I = 0, L = 0, R = 0 }) => I * (R / 1000) * (L + L),
  'nf-dc-cable-choice': ({ I = 0, L = 0, X = 0 }) => {
    const perKilometre = [13.3, 7.98, 4.95, 3.3, 1.91, 1.21];
    const first = perKilometre.findIndex((ohms) => whole((L + L) * I * (ohms / 1000)) <= whole(X));
    return [1.5, 2.5, 4, 6, 10, 16][first] ?? NaN;
  },
  'nf-dc-fuse-choice': ({ I = 0, K = 0 }) => [3, 5, 7.5, 10, 15, 20, 25, 30, 40].find((fuse) => 4 * fuse >= 5 * I && fuse <= K) ?? NaN,
  'nf-connector-heat': ({ I = 0, R = 0 }) => I ** 2 * (R * 1e-3),
  'nf-battery-run-time': ({ C = 0, U = 0, I = 0 }) => (C / I) * (U / 100),
  // In a hundred hours: so many of them on transmit, the rest on receive.
  'nf-run-time-mixed': ({ C = 0, D = 0, X = 0, Y = 0 }) => (100 * C) / (D * X + (100 - D) * Y),
  'nf-charge-time': ({ C = 0, D = 0, I = 0, N = 0 }) => ((D / 100) * C) / ((N / 100) * I),
  'nf-energy-watt-hours': ({ Q = 0, V = 0 }) => (Q * V) / 1000,
  'nf-battery-short-circuit': ({ E = 0, R = 0 }) => 1000 * (E / R),
  // Equal resistances side by side: the resistance is shared by the number of them.
  'nf-parallel-battery-short': ({ E = 0, N = 0, R = 0 }) => E / (R / 1000 / N),

  // High voltage
  'nf-capacitor-energy': ({ C = 0, V = 0 }) => (C * 1e-6 * V ** 2) / 2,
  'nf-bleed-time': ({ C = 0, R = 0 }) => 5 * (R * 1e3) * (C * 1e-6),
  'nf-bleed-to-safe-voltage': ({ C = 0, R = 0, V = 0 }) => R * 1e3 * (C * 1e-6) * (Math.log(V) - Math.log(50)),
  'nf-rms-to-peak': ({ V = 0 }) => V / Math.sin(Math.PI / 4),
  // Power is current squared times resistance; the voltage is that current times the resistance.
  'nf-rf-voltage': ({ P = 0, Z = 0 }) => Math.sqrt(P / Z) * Z,

  // Masts, wires, ladders and storms
  'nf-mast-fall-radius': ({ H = 0, A = 0, M = 0 }) => M + A + H,
  'nf-overhead-line-clearance': ({ H = 0, K = 0 }) => H * K,
  // The question's own words: 0.95 of half the free-space wavelength, 300 m (984 ft) over the megahertz.
  'nf-half-wave-length': ({ F = 0 }, region) => (region === 'na' ? 468 : 143) / F,
  'nf-wire-swing-clearance': ({ F = 0, M = 0 }, region) => M + (region === 'na' ? 468 : 143) / F,
  'nf-ladder-base': ({ H = 0 }) => 0.25 * H,
  'nf-ladder-height-from-base': ({ B = 0 }) => B / 0.25,
  'nf-ladder-angle': ({ B = 0, H = 0 }) => 90 - (Math.atan2(B, H) / Math.PI) * 180,
  'nf-ladder-reach': ({ L = 0 }) => L / slope,
  'nf-ladder-length-for-landing': ({ H = 0 }, region) => (H + (region === 'na' ? 3 : 1)) * slope,
  'nf-lightning-distance': ({ T = 0 }, region) => (region === 'na' ? 0.2 * T : (340 * T) / 1000),

  // Noise
  'nf-noise-dose': ({ L = 0, T = 0 }) => 100 * (T / (480 * Math.exp((-Math.LN2 * (L - 85)) / 3))),
  'nf-noise-time': ({ L = 0, R = 0, W = 0 }) => W * 60 * Math.exp((-Math.LN2 * (L - R)) / 3),

  // Radio-frequency power and exposure
  'nf-dbm-to-watts': ({ X = 0 }) => ratio(X - 30),
  'nf-watts-to-dbm': ({ P = 0 }) => decibels(P) + 30,
  'nf-feeder-loss-power': ({ A = 0, L = 0, P = 0 }) => P / ratio((A / 100) * L),
  'nf-eirp': ({ G = 0, L = 0, P = 0 }) => (P / ratio(L)) * ratio(G),
  'nf-erp': ({ G = 0, P = 0 }) => (P * ratio(G)) / ratio(2.15),
  'nf-average-power': ({ D = 0, M = 0, P = 0 }) => (P * (M / 30) * D) / 100,
  'nf-power-density': ({ E = 0, D = 0 }) => E / Math.PI / (2 * D) ** 2,
  'nf-inverse-square': ({ A = 0, B = 0, S = 0 }) => (S * A * A) / (B * B),
  'nf-field-strength': ({ D = 0, E = 0 }) => fieldOf(densityAt(E, D)),
  'nf-compliance-distance': ({ E = 0, F = 0 }, region) =>
    region === 'na' ? radiusFor(2.56 * E, publicDensity(F)) : radiusFor(E, publicField(F) ** 2 / (120 * Math.PI)),
  // The field may be so many times as strong, so the power that many times squared.
  'nf-compliance-with-reflection': ({ E = 0, F = 0, K = 0 }, region) =>
    radiusFor(E * K ** 2, (region === 'na' ? 27.5 : publicField(F)) ** 2 / (120 * Math.PI)),
};
