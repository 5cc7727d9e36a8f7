import { open } from 'node:fs/promises';
import { SetUpError, codeOf, explain } from '../set-up-error.js';

const mostBytes = 1024;
const leastLetters = 12;

/**
 * Reads a passphrase from a file, since an argument or a variable can be read by others on the same computer. A line break at its end
 * does not count.
 * @param file undefined: there is none
 * @throws SetUpError when it cannot be read or is empty
 */
export async function readPassphrase(file: string | undefined): Promise<string | undefined> {
  if (file === undefined) return undefined;
  const refuse = (why: string, cause?: unknown): SetUpError =>
    new SetUpError(
      `The file with the passphrase, ${file}, ${why}.`,
      'Write one line into it and let only yourself read it; --passphrase-file or RUNGWISE_BACKUP_PASSPHRASE_FILE names it.',
      { cause },
    );
  const handle = await open(file, 'r').catch((error: unknown) => {
    throw refuse(codeOf(error) === 'ENOENT' ? 'is not there' : `cannot be read: ${explain(error)}`, error);
  });
  try {
    const buffer = Buffer.alloc(mostBytes + 1);
    const { bytesRead } = await handle.read(buffer, 0, buffer.length, 0);
    if (bytesRead > mostBytes) throw refuse('holds more than a passphrase');
    const text = buffer
      .subarray(0, bytesRead)
      .toString('utf8')
      .replace(/\r?\n$/, '');
    if (text.trim() === '') throw refuse('is empty');
    if (/[\r\n]/.test(text)) throw refuse('holds more than one line');
    return text;
  } finally {
    await handle.close();
  }
}

/** Whoever has the file can try passphrases without end: a short one protects nobody. @throws SetUpError */
export function refuseShort(passphrase: string | undefined): void {
  if (passphrase !== undefined && [...passphrase].length < leastLetters)
    throw new SetUpError(
      `The passphrase for backups is shorter than ${leastLetters} letters.`,
      'Take five or six words that have nothing to do with each other.',
    );
}
