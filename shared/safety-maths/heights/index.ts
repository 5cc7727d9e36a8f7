import type { Calculation } from '../calculation.js';
import { ladderAngle } from './ladder-angle.js';
import { ladderBase } from './ladder-base.js';
import { ladderLengthForLanding } from './ladder-length-for-landing.js';
import { ladderReach } from './ladder-reach.js';
import { mastFallRadius } from './mast-fall-radius.js';

export const heights: readonly Calculation[] = [ladderBase, ladderAngle, ladderReach, ladderLengthForLanding, mastFallRadius];
