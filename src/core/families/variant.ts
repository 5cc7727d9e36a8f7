import type { Region } from '../syllabus.js';
import type { Family } from './schema.js';

type Override = NonNullable<Family['regions']['uk']['override']>;

/** A family as one region sees it. */
export type Variant = Omit<Family, 'regions'> & { region: Region };

export type Path = (string | number)[];
/** Takes what is wrong, and where it stands. */
export type Report = (path: Path, message: string) => void;

/**
 * The family with a region's changes laid over it, or null when it is not offered there. Inputs, constants, derived values, answer
 * and formula merge by name; stories, steps, constraints, tell-tales, mayCoincide, minWrong, caution and calculator replace the base ones.
 */
export function variantOf(family: Family, region: Region): Variant | null {
  const { available, override = {} } = family.regions[region];
  if (!available) return null;
  const { regions: _regions, ...base } = family;
  return {
    ...base,
    region,
    stories: override.stories ?? base.stories,
    inputs: { ...base.inputs, ...override.inputs },
    constants: { ...base.constants, ...override.constants },
    derived: { ...base.derived, ...override.derived },
    constraints: override.constraints ?? base.constraints,
    answer: { ...base.answer, ...given(override.answer) } as Family['answer'],
    formula: { ...base.formula, ...given(override.formula) } as Family['formula'],
    steps: override.steps ?? base.steps,
    tellTales: override.tellTales ?? base.tellTales,
    minWrong: override.minWrong ?? base.minWrong,
    mayCoincide: override.mayCoincide ?? base.mayCoincide,
    caution: override.caution ?? base.caution,
    calculator: override.calculator ?? base.calculator,
  };
}

/** Without the fields that are there but undefined, which would hide the base's. */
function given<T extends object>(part: T | undefined): Partial<T> {
  return Object.fromEntries(Object.entries(part ?? {}).filter(([, value]) => value !== undefined)) as Partial<T>;
}

const mergedByName = new Set(['inputs', 'constants', 'derived', 'answer', 'formula']);

/** Where in the family's file a part of the variant was written: in the region's override when it is given there, else in the base. */
export function writtenAt(family: Family, region: Region, path: Path): Path {
  const override: Override = family.regions[region].override ?? {};
  const [part, name] = path;
  const changed = override[part as keyof Override];
  const here = changed !== undefined && (!mergedByName.has(String(part)) || Object.hasOwn(changed as object, String(name)));
  return here ? ['regions', region, 'override', ...path] : path;
}
