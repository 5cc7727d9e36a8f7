import type { Calculation } from '../calculation.js';
import { bodyCurrent } from './body-current.js';
import { bodyImpedance } from './body-impedance.js';
import { disconnectionTime } from './disconnection-time.js';
import { earthFaultCurrent } from './earth-fault-current.js';
import { loopImpedanceLimit } from './loop-impedance-limit.js';
import { rcdBreakTime } from './rcd-break-time.js';
import { rcdEarthResistance } from './rcd-earth-resistance.js';
import { rcdTestCurrent } from './rcd-test-current.js';
import { shockEffectCurrent } from './shock-effect-current.js';
import { shockEffectOneSecond } from './shock-effect-one-second.js';
import { shockThresholds } from './shock-thresholds.js';
import { voltageBand } from './voltage-band.js';
import { voltageForBodyCurrent } from './voltage-for-body-current.js';
import { voltageLimits } from './voltage-limits.js';

export const electricShock: readonly Calculation[] = [
  bodyCurrent,
  bodyImpedance,
  voltageForBodyCurrent,
  shockThresholds,
  shockEffectOneSecond,
  shockEffectCurrent,
  rcdBreakTime,
  rcdTestCurrent,
  rcdEarthResistance,
  disconnectionTime,
  loopImpedanceLimit,
  earthFaultCurrent,
  voltageBand,
  voltageLimits,
];
