import { readFileSync, readdirSync } from 'node:fs';
import { parse } from 'yaml';
import { compileFamily, type CompiledFamily } from '../../../src/core/families/draw.js';
import { familySchema, type Family } from '../../../src/core/families/schema.js';
import type { Region } from '../../../src/core/syllabus.js';

const folder = new URL('../../../question-packs/entry-safety/families/', import.meta.url);

/** The families of the shipped pack, read straight from their files. */
export const shipped: Family[] = readdirSync(folder)
  .sort()
  .flatMap((file) =>
    (parse(readFileSync(new URL(file, folder), 'utf8')) as { families: unknown[] }).families.map((family) => familySchema.parse(family)),
  );

export function familyNamed(id: string): Family {
  const family = shipped.find((each) => each.id === id);
  if (family === undefined) throw new Error(`no shipped family ${id}`);
  return family;
}

export function compiledFor(id: string, region: Region = 'uk'): CompiledFamily {
  const compiled = compileFamily(familyNamed(id), region);
  if (compiled === null) throw new Error(`${id} is not offered in ${region}`);
  return compiled;
}

/** Every family in every region that offers it. */
export const variants: [string, Region, CompiledFamily][] = shipped.flatMap((family) =>
  (['uk', 'eu', 'na'] as const).flatMap((region): [string, Region, CompiledFamily][] => {
    const compiled = compileFamily(family, region);
    return compiled === null ? [] : [[family.id, region, compiled]];
  }),
);

/** Every set of inputs of a family's grid. */
export function* gridOf(compiled: CompiledFamily): Generator<Map<string, number>> {
  const sizes = compiled.inputs.map(({ size }) => size);
  const total = sizes.reduce((product, size) => product * size, 1);
  for (let index = 0; index < total; index += 1) {
    let rest = index;
    yield new Map(
      compiled.inputs.map((input, i) => {
        const position = rest % (sizes[i] as number);
        rest = Math.floor(rest / (sizes[i] as number));
        return [input.name, input.at(position)];
      }),
    );
  }
}
