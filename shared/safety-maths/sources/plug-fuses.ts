import { source } from './source.js';
import type { MathsSource } from './source.js';

const bs7671 = 'BS 7671 Requirements for Electrical Installations';
const code = 'Code of Practice for In-service Inspection and Testing of Electrical Equipment';

/** Sources of plug fuses, flexes and leads. */
export const plugFusesSources = {
  plugFuse: source(
    'bs1362-figures',
    'BS 1362 General purpose fuse links for domestic and similar purposes (primarily for use in plugs)',
    'BSI',
    1973,
    'scope, markings, dimensions, conventional currents and time/current zones, as other pages quote them',
    'read-secondary',
  ),
  fuseLoss: source(
    'fuse-loss',
    'Loss of about 1 W in a 13 A plug fuse at its rated current',
    'article on plug fuses',
    null,
    'one figure',
    'read-secondary',
  ),
  flexCurrent: source(
    'flex-current',
    code,
    'IET',
    null,
    'table VII.1, flex area and greatest current, as testers quote it',
    'read-secondary',
  ),
  flexCurrentWiring: source('flex-current-4f3a', bs7671, 'IET and BSI', 2018, 'table 4F3A, flexible cables', 'memory'),
  flexForFuse: source(
    'flex-for-fuse',
    'Replacement of appliance flexes: smallest area for 3 A and 13 A fuses',
    'appliance-testing information page',
    null,
    'table of two rows',
    'read-secondary',
  ),
  loadFuseCable: source(
    'bs7671-433',
    `${bs7671}: load at most the fuse, fuse at most the cable`,
    'IET and BSI',
    2018,
    'regulation 433.1.1',
    'computed',
  ),
  flexDrop: source(
    'flex-drop-4f3b',
    bs7671,
    'IET and BSI',
    2018,
    'table 4F3B, flexible cables, 60 °C conductor, in a cable distributor’s copy',
    'read-secondary',
  ),
  dropLimit: source('bs7671-drop', bs7671, 'IET and BSI', 2018, 'appendix 4, section 6.4: 3 % lighting, 5 % other uses', 'memory'),
  leadLength: source('lead-length', code, 'IET', null, 'lengths of extension leads, rows 1.5 mm² and 2.5 mm²', 'read-secondary'),
  leadLengthThin: source('lead-length-thin', code, 'IET', null, 'lengths of extension leads, row 1.25 mm²', 'memory'),
  leadResistance: source(
    'lead-resistance',
    'Resistance of extension-lead conductors against length',
    'extension-lead maker’s advice page',
    null,
    'table',
    'read-secondary',
  ),
  drumLabel: source(
    'iec61242',
    'IEC 61242 and BS EN 61242 Cable reels for household and similar purposes',
    'IEC and BSI',
    null,
    'wound and unwound ratings, as makers’ labels and one summary page give them',
    'read-secondary',
  ),
} as const satisfies Record<string, MathsSource>;
