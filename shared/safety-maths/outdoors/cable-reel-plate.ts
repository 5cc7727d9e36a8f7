import { CalculationInputError, quantity } from '../inputs.js';
import { put } from '../working.js';

/** The two powers on a reel's plate, as inputs, W. */
export const plateInputs = {
  wound: quantity('power on the plate, wound up', 'W', { min: 1, max: 10000 }),
  unwound: quantity('power on the plate, fully unwound', 'W', { min: 1, max: 10000 }),
};

/** Refuses a plate that would allow more wound than unwound: the two have been mixed up. */
export function checkPlate(wound: number, unwound: number): void {
  if (wound > unwound)
    throw new CalculationInputError('wound', `a reel never carries more wound than unwound; give at most ${put(unwound, 'W')}`);
}
