import { randomFrom } from '../random.js';
import type { CompiledFamily } from './compile.js';
import { fairFigures, type Figures } from './figures.js';

export interface Sample {
  story: number;
  inputs: ReadonlyMap<string, number>;
  figures: Figures;
  /** Sets of inputs tried, the fair one included. */
  tries: number;
}

/**
 * The first fair set of inputs of a seed, or null when none of `limit` tries is fair.
 *
 * People have seen draws by their seed, so this order must never change: chance is seeded with "family id/region/seed"; it is asked first
 * for the story, then, in each try, for one position of every input in order of their names.
 */
export function sample(compiled: CompiledFamily, seed: string | number, limit: number): Sample | null {
  const random = randomFrom(`${compiled.variant.id}/${compiled.region}/${seed}`);
  const story = random.below(compiled.variant.stories.length);
  for (let tries = 1; tries <= limit; tries += 1) {
    const inputs = new Map(compiled.inputs.map((input) => [input.name, input.at(random.below(input.size))]));
    const figures = fairFigures(compiled, inputs);
    if (figures !== null) return { story, inputs, figures, tries };
  }
  return null;
}
