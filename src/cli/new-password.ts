import { wayBack } from '../accounts/index.js';
import { readSettings } from '../platform/settings.js';
import { SetUpError } from '../platform/set-up-error.js';
import type { CommandIo } from './command.js';
import { withDatabase } from './with-database.js';

const usage = 'Use: rungwise new-password <the name that they sign in with>';

/**
 * `rungwise new-password <name>`: a one-time link to a new password for a tutor or administrator who has lost theirs, or the device with
 * the codes. Answers 0 with the link, 1 when nobody has that name, 2 when it could not be tried.
 */
export async function run(args: string[], io: CommandIo): Promise<number> {
  const name = args
    .filter((arg) => !arg.startsWith('--'))
    .join(' ')
    .trim();
  if (name === '' || args.some((arg) => arg.startsWith('--'))) {
    io.err(usage);
    return 2;
  }
  const settings = readSettings();
  try {
    const made = await withDatabase(io, (db) => wayBack(db, settings.clock.now(), name));
    if (made === null) {
      io.err(`Nobody who teaches or runs this server signs in as ${JSON.stringify(name.slice(0, 60))}, or the account is closed.`);
      return 1;
    }
    const address =
      settings.origin ?? `http://${settings.host === '0.0.0.0' || settings.host === '::' ? '127.0.0.1' : settings.host}:${settings.port}`;
    io.out(`${address}/invitation/${made.token}`);
    io.err(
      'Open this address within an hour, while the server runs. It works once. One-time codes are off, and all browsers are signed out.',
    );
    return 0;
  } catch (error) {
    io.err(error instanceof SetUpError ? `${error.message}\n${error.advice}` : `The database could not be used: ${String(error)}`);
    return 2;
  }
}
