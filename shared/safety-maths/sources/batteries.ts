import { source } from './source.js';
import type { MathsSource } from './source.js';

const conductors = 'IEC 60228 Conductors of insulated cables';
const blade = 'ISO 8820-3 Road vehicles: fuse-links with tabs (blade type)';
const cellSheets = 'Specification summaries of 18650 lithium-ion cells';

/** Sources of batteries, direct-current leads and their fuses. */
export const batteriesSources = {
  conductorTable: source(
    'iec60228-tables',
    conductors,
    'IEC',
    2004,
    'tables 1 to 3, greatest resistance at 20 °C, plain copper, in cable makers’ copies',
    'read-secondary',
  ),
  copperTemperature: source(
    'iec60228-temperature',
    conductors,
    'IEC',
    2004,
    'annex, temperature correction for copper, in a cable maker’s copy',
    'read-secondary',
  ),
  resistivity: source(
    'copper-resistivity',
    'Quick estimate of conductor resistance from resistivity and stranding factor',
    'cable technical note',
    null,
    '17.241 Ω mm²/km for copper',
    'read-secondary',
  ),
  dcDrop: source(
    'dc-drop',
    'Voltage drop in a two-conductor d.c. lead: 2 × length × resistance per metre × current',
    'derived from Ohm’s law and IEC 60228',
    2004,
    'resistances of class 5',
    'computed',
  ),
  awg: source(
    'astm-b258',
    'ASTM B258 Standard nominal diameters and cross-sectional areas of AWG sizes of solid round wires',
    'ASTM',
    null,
    'table of diameters, in two secondary tables; resistances from a university physics table',
    'read-secondary',
  ),
  internalResistance: source(
    'internal-resistance',
    'Worked problems: internal resistance from the drop of terminal voltage',
    'school physics worked solutions',
    null,
    'two problems',
    'read-secondary',
  ),
  leadAcidSheet: source(
    'lead-acid-sheet',
    'Data sheet of a 12 V, 14 Ah valve-regulated lead-acid battery (20-hour rate)',
    'battery maker’s data sheet',
    null,
    'table of characteristics: charge voltages at 25 °C, discharge rates',
    'read-secondary',
  ),
  ampereHours: source(
    'ampere-hours',
    'Note explaining ampere-hour ratings',
    'battery retailer',
    null,
    'two worked examples',
    'read-secondary',
  ),
  lithiumCell: source(
    'lithium-cell',
    'Specification of a 2600 mAh 18650 lithium-ion cell',
    'cell maker’s specification',
    null,
    'items 3.1 to 3.9',
    'read-secondary',
  ),
  lithiumCells: source(
    'lithium-cells',
    cellSheets,
    'cell makers’ specifications',
    null,
    'charge and discharge limits, charging temperature',
    'read-secondary',
  ),
  otherCells: source('other-cells', 'Usual limits of other kinds of cell', 'trade knowledge', null, 'none', 'memory'),
  hydrogen: source('hydrogen', 'Lower explosive limit of hydrogen in air', 'chemical safety data', null, '4 % by volume', 'memory'),
  bladeColour: source(
    'blade-colour',
    'Blade-fuse colour code (SAE J1284, ISO 8820-3)',
    'three general articles',
    null,
    '3 A, 7.5 A, 10 A, 15 A and 30 A',
    'read-secondary',
  ),
  bladeFuse: source('iso8820-3', blade, 'ISO', 2010, 'rated currents, colours and operating times', 'memory'),
  fuseMargin: source(
    'fuse-80',
    'Load a d.c. fuse to about 80 % of its rating at a continuous current',
    'common practice',
    null,
    'none',
    'common-practice',
  ),
  chargeStored: source(
    'charge-stored',
    'A battery stores 80 % to 90 % of the charge put into it',
    'common practice',
    null,
    'none',
    'common-practice',
  ),
} as const satisfies Record<string, MathsSource>;
