import { source } from './source.js';
import type { MathsSource } from './source.js';

/** Sources of the electrical basics. */
export const electricalSources = {
  continuousLoad: source(
    'nec-continuous',
    'NFPA 70, National Electrical Code: a continuous load may use 80 % of the breaker’s rating',
    'NFPA',
    2023,
    '210.20(A)',
    'memory',
  ),
  standingLeakage: source(
    'bs7671-leakage',
    'BS 7671 Requirements for Electrical Installations: standing leakage at most 30 % of the RCD’s rating',
    'IET and BSI',
    2018,
    'the 30 % rule, as other pages quote it',
    'read-secondary',
  ),
  rcdHalf: source(
    'rcd-half',
    'IEC 61008-1 and IEC 61009-1 Residual current operated circuit-breakers: no tripping at half the rated current',
    'IEC',
    2010,
    'tables 1 and 2, as instrument manuals quote them',
    'read-secondary',
  ),
  interrupter: source(
    'ul-943',
    'UL 943 Ground-Fault Circuit-Interrupters: class A trips at 6 mA and not below 4 mA',
    'UL',
    2016,
    'class A, as other pages quote it',
    'read-secondary',
  ),
} as const satisfies Record<string, MathsSource>;
