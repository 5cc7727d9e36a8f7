import type { Calculation } from '../calculation.js';
import { cableDrumLoad } from './cable-drum-load.js';
import { extensionLeadLength } from './extension-lead-length.js';
import { extensionLeadLoad } from './extension-lead-load.js';
import { extensionLeadVoltageDrop } from './extension-lead-voltage-drop.js';
import { flexCurrentWiringRules } from './flex-current-wiring-rules.js';
import { flexCurrent } from './flex-current.js';
import { flexForFuse } from './flex-for-fuse.js';
import { flexForLoad } from './flex-for-load.js';
import { flexVoltageDropFigure } from './flex-voltage-drop-figure.js';
import { fuseBy700Watts } from './fuse-by-700-watts.js';
import { fuseFromCurrent } from './fuse-from-current.js';
import { fuseFromPower } from './fuse-from-power.js';
import { fuseResistance } from './fuse-resistance.js';
import { leadResistance } from './lead-resistance.js';
import { loadFuseFlex } from './load-fuse-flex.js';
import { loadOn13AmpPlug } from './load-on-a-13-amp-plug.js';
import { plugFuseColour } from './plug-fuse-colour.js';
import { plugFuseFigures } from './plug-fuse-figures.js';
import { plugFuseHalfHour } from './plug-fuse-half-hour.js';
import { plugFuseOpeningTime } from './plug-fuse-opening-time.js';
import { powerLeftOnAFuse } from './power-left-on-a-fuse.js';
import { voltageDropLimit } from './voltage-drop-limit.js';

export const plugFuses: readonly Calculation[] = [
  fuseFromPower,
  fuseFromCurrent,
  fuseBy700Watts,
  loadOn13AmpPlug,
  powerLeftOnAFuse,
  flexForLoad,
  flexForFuse,
  flexCurrent,
  flexCurrentWiringRules,
  loadFuseFlex,
  plugFuseFigures,
  plugFuseColour,
  plugFuseHalfHour,
  plugFuseOpeningTime,
  fuseResistance,
  extensionLeadLoad,
  extensionLeadLength,
  extensionLeadVoltageDrop,
  flexVoltageDropFigure,
  voltageDropLimit,
  leadResistance,
  cableDrumLoad,
];
