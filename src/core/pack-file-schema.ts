import { z } from 'zod';
import { packFileSchemas } from './pack.js';

/**
 * The format of a pack's files as a JSON Schema (2020-12), made from the schemas that the check uses. It says what one file may hold; what
 * joins files together, and a few rules about order, are the check's alone.
 */
export function packFileJsonSchema(): object {
  const properties = Object.fromEntries(
    Object.entries(packFileSchemas).map(([kind, schema]) => [
      kind,
      plain(z.toJSONSchema(schema, { target: 'draft-2020-12', io: 'input' })),
    ]),
  );
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: 'One file of a Rungwise question pack',
    description:
      'A file holds one of these keys. `rungwise check` also says what no schema can: references between files, item-writing flaws, figures of families that are not fair.',
    type: 'object',
    minProperties: 1,
    maxProperties: 1,
    additionalProperties: false,
    properties,
  };
}

/** Without what only the outermost schema says. */
function plain(schema: object): object {
  const { $schema: _, ...rest } = schema as { $schema?: string };
  return rest;
}
