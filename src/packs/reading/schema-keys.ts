import type { z } from 'zod';

type Schema = z.core.$ZodType;
/** The parts of zod's own description of a schema that are looked at here. */
interface Definition {
  type: string;
  innerType?: Schema;
  element?: Schema;
  valueType?: Schema;
  shape?: Record<string, Schema>;
  options?: Schema[];
}

/** The keys that the mapping at a path may have; none when it is no mapping, or has keys of its own choice. */
export function keysAllowed(schema: Schema, path: readonly (string | number)[]): string[] {
  return [...new Set(schemasAt([schema], path).flatMap((at) => Object.keys(definition(at).shape ?? {})))];
}

function schemasAt(schemas: Schema[], path: readonly (string | number)[]): Schema[] {
  const here = schemas.flatMap(unwrapped);
  const [step, ...rest] = path;
  return step === undefined
    ? here
    : schemasAt(
        here.flatMap((schema) => inside(schema, step)),
        rest,
      );
}

/** Without `optional` and its like; a union as its members. */
function unwrapped(schema: Schema): Schema[] {
  const { innerType, options } = definition(schema);
  if (innerType) return unwrapped(innerType);
  return options ? options.flatMap(unwrapped) : [schema];
}

function inside(schema: Schema, step: string | number): Schema[] {
  const { element, valueType, shape } = definition(schema);
  if (shape) return typeof step === 'string' && Object.hasOwn(shape, step) ? [shape[step] as Schema] : [];
  const value = element ?? valueType;
  return value ? [value] : [];
}

function definition(schema: Schema): Definition {
  return schema._zod.def as unknown as Definition;
}
