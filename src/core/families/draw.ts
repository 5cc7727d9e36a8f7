import { RungwiseError } from '../errors.js';
import type { CompiledFamily } from './compile.js';
import { sample } from './sample.js';
import { told, type Worked } from './work.js';

/** The door of this folder: what the rest of the program uses of families. */
export { acceptNumber, tellTalesOf, type Key, type TellTale } from './accept.js';
export { checkFamily } from './check.js';
export { compileFamily, type CompiledFamily } from './compile.js';
export { workingMathML } from './formula.js';
export { fourOptions } from './options.js';
export { unitSpoken } from './units.js';

/** One set of numbers from a family, fixed by a seed. */
export interface Draw extends Worked {
  seed: string;
}

/** A family that needs more tries than this for one draw is refused when its pack is checked. */
const drawTries = 10_000;

/**
 * Draws fresh numbers. The same family revision, region and seed give the same draw on every machine and in every later version.
 * Throws RungwiseError when 10,000 tries bring no fair set, which a checked pack never does.
 */
export function draw(compiled: CompiledFamily, seed: string | number): Draw {
  const found = sample(compiled, seed, drawTries);
  if (found === null) {
    throw new RungwiseError(
      'internal',
      `${compiled.variant.id} in ${compiled.region}: none of ${drawTries} sets of numbers meets the constraints and leaves ${compiled.variant.minWrong} usable tell-tales; widen the inputs or relax the constraints`,
    );
  }
  return { ...told(compiled, found.inputs, found.figures, found.story), seed: String(seed) };
}
