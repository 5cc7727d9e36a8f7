import { source } from './source.js';
import type { MathsSource } from './source.js';

/** Sources of what a plug may still hold after it is pulled out. The formulas themselves stand on `capacitor` in common.ts. */
export const capacitorsSources = {
  plugTimeConstant: source(
    'iec60950-1',
    'IEC 60950-1 Information technology equipment - Safety',
    'IEC',
    2005,
    '2.1.1.7: time constant at most 1 s (pluggable type A) or 10 s (type B), capacitors above 0.1 µF, as forums quote it',
    'read-secondary',
  ),
  plugAudioVideo: source(
    'iec62368-1',
    'IEC 62368-1 Audio/video, information and communication technology equipment - Safety',
    'IEC',
    2018,
    '5.5.2.2: 60 V after 2 s, from a summary; the full table depends on the capacitance',
    'read-secondary',
  ),
  plugHousehold: source(
    'iec60335-1',
    'IEC 60335-1 Household and similar electrical appliances - Safety',
    'IEC',
    2010,
    '34 V (peak) after 1 s; the values were read on another page, the number of the clause (22.5) is from memory',
    'read-secondary',
  ),
  plugAudio: source(
    'iec60065',
    'IEC 60065 Audio, video and similar electronic apparatus - Safety',
    'IEC',
    2014,
    '9.1.6: 35 V (peak) after 2 s, capacitance above 0.1 µF; some editions are quoted with 34 V',
    'memory',
  ),
  plugLaboratory: source(
    'iec61010-1',
    'IEC 61010-1 Safety requirements for measurement, control and laboratory equipment',
    'IEC',
    2010,
    '6.10.3 and 6.3.1: 60 V d.c. or 45 µC, 5 s after disconnection, as a mailing list discusses it',
    'read-secondary',
  ),
  plugMachine: source(
    'en60204-1',
    'EN 60204-1 Safety of machinery - electrical equipment of machines',
    'CENELEC',
    2006,
    '6.2.4: 60 V within 5 s, plug pins within 1 s',
    'read-secondary',
  ),
} as const satisfies Record<string, MathsSource>;
