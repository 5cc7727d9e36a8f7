import type { Calculation } from '../calculation.js';
import { droppedToolSpeed } from './dropped-tool-speed.js';
import { ladderAngle } from './ladder-angle.js';
import { ladderBase } from './ladder-base.js';
import { ladderBaseAtAngle } from './ladder-base-at-angle.js';
import { ladderFigures } from './ladder-figures.js';
import { ladderHeightFromBase } from './ladder-height-from-base.js';
import { ladderLengthForLanding } from './ladder-length-for-landing.js';
import { ladderLengthToContact } from './ladder-length-to-contact.js';
import { ladderReach } from './ladder-reach.js';
import { mastFallRadius } from './mast-fall-radius.js';
import { overheadLineClearance } from './overhead-line-clearance.js';
import { overheadLineConsult } from './overhead-line-consult.js';
import { overheadLineExclusion } from './overhead-line-exclusion.js';
import { overheadLineHeight } from './overhead-line-height.js';
import { portableLadderLength } from './portable-ladder-length.js';
import { wireSwingClearance } from './wire-swing-clearance.js';

export const heights: readonly Calculation[] = [
  ladderBase,
  ladderAngle,
  ladderReach,
  ladderLengthForLanding,
  ladderHeightFromBase,
  ladderLengthToContact,
  ladderBaseAtAngle,
  ladderFigures,
  portableLadderLength,
  mastFallRadius,
  overheadLineClearance,
  wireSwingClearance,
  overheadLineConsult,
  overheadLineExclusion,
  overheadLineHeight,
  droppedToolSpeed,
];
