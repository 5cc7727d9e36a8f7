import { packFileJsonSchema } from '../core/pack-file-schema.js';
import type { CommandIo } from './command.js';

/** `rungwise schema`: the format of a pack's files as a JSON Schema (2020-12), for editors and other programs. */
export function run(args: readonly string[], io: CommandIo): Promise<number> {
  const unknown = args.find((arg) => arg !== '--json');
  if (unknown !== undefined) {
    io.err(`${JSON.stringify(unknown.slice(0, 40))} is nothing that this command takes.\nUse: rungwise schema`);
    return Promise.resolve(2);
  }
  io.out(JSON.stringify(packFileJsonSchema(), null, 2));
  return Promise.resolve(0);
}
