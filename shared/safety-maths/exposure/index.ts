import type { Calculation } from '../calculation.js';
import { antennaClearanceHeight } from './antenna-clearance-height.js';
import { antennaGainForLimit } from './antenna-gain-for-limit.js';
import { averagePower } from './average-power.js';
import { complianceDistance } from './compliance-distance.js';
import { distanceForFieldLimit } from './distance-for-field-limit.js';
import { euWorkerActionLevel } from './eu-worker-action-level.js';
import { exposureSum, exposureSumFields } from './exposure-sum.js';
import { fccComplianceDistances } from './fcc-compliance-distances.js';
import { fccExemption } from './fcc-exemption.js';
import { fccExposureLimits } from './fcc-exposure-limits.js';
import { fieldFromPowerDensity } from './field-from-power-density.js';
import { fieldStrength } from './field-strength.js';
import { icnirp1998Levels } from './icnirp-1998-levels.js';
import { icnirp2020Local } from './icnirp-2020-local.js';
import { icnirp2020WholeBody } from './icnirp-2020-whole-body.js';
import { limbCurrentLevel } from './limb-current-level.js';
import { powerDensity } from './power-density.js';
import { powerDensityElsewhere } from './power-density-elsewhere.js';
import { powerDensityFromField } from './power-density-from-field.js';
import { reflectionPowerFactor } from './reflection-power-factor.js';
import { stationDistance } from './station-distance.js';
import { ukAssessmentThreshold } from './uk-assessment-threshold.js';

export const exposure: readonly Calculation[] = [
  averagePower,
  powerDensity,
  fieldStrength,
  complianceDistance,
  distanceForFieldLimit,
  stationDistance,
  powerDensityElsewhere,
  powerDensityFromField,
  fieldFromPowerDensity,
  reflectionPowerFactor,
  antennaClearanceHeight,
  antennaGainForLimit,
  exposureSum,
  exposureSumFields,
  icnirp2020WholeBody,
  icnirp2020Local,
  icnirp1998Levels,
  limbCurrentLevel,
  euWorkerActionLevel,
  ukAssessmentThreshold,
  fccExposureLimits,
  fccComplianceDistances,
  fccExemption,
];
