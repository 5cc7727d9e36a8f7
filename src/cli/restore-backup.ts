import { dirname, resolve } from 'node:path';
import type pg from 'pg';
import { recordChange } from '../audit/index.js';
import { removePersonRows } from '../personal-data/index.js';
import { keptBackups, readPassphrase, removedList, restoreBackup, type Removed, type Restored } from '../platform/backup/index.js';
import { openDatabasePlace } from '../platform/database-place.js';
import { readSettings } from '../platform/settings.js';
import { backupCommand, reportJson, reportWords, type Asked } from './backup-arguments.js';
import type { CommandIo } from './command.js';

/**
 * `rungwise restore <file>`: puts a backup into the database that the server uses, with every server stopped. People who were removed since
 * are removed again, and everybody signs in anew. Answers 0 when it is in, 2 when not: then the database is as it was.
 */
export const run = backupCommand({
  usage: 'Use: rungwise restore <file> [--passphrase-file <file>] [--replace] [--json]',
  replaceable: true,
  work: async (asked, io) => {
    const { restored, gone } = await put(asked, io);
    const { before, migrated } = restored;
    io.out(asked.json ? JSON.stringify({ ...reportJson(restored), before, migrated, removedAgain: gone }) : words(restored, gone));
  },
});

function words(restored: Restored, gone: number): string {
  return [
    `Restored: ${restored.file}`,
    reportWords(restored),
    ...(restored.migrated.length > 0 ? [`Brought up to date: ${restored.migrated.join(', ')}`] : []),
    ...(gone > 0 ? [`People removed again, who had been removed since: ${gone}`] : []),
    ...(restored.before === null ? [] : [`What was there before is in ${restored.before}`]),
    'Start the server; everybody signs in again.',
  ].join('\n');
}

async function put(asked: Asked, io: CommandIo): Promise<{ restored: Restored; gone: number }> {
  const settings = readSettings();
  const { program, migrationsFolder, now, ...before } = await keptBackups(settings, settings.dataFolder);
  const passphrase = asked.passphraseFile === undefined ? before.passphrase : await readPassphrase(asked.passphraseFile);
  const file = resolve(asked.file);
  const lists = [removedList(before.folder), removedList(dirname(file))];
  const removed: Removed[] = (await Promise.all(lists.map((list) => list.read()))).flat();
  if (removed.length === 0)
    io.err(
      'There is no removed-people.txt with anybody in it beside the file, nor in the folder of backups. If people were removed since this backup was taken, they are there again: remove them anew, or bring that file and restore again.',
    );
  io.err('Opening the database …');
  const place = await openDatabasePlace(settings, settings.dataFolder, io.err);
  try {
    let gone = 0;
    const restored = await restoreBackup({
      url: place.url,
      file,
      passphrase,
      migrationsFolder,
      program,
      now,
      replace: asked.replace,
      before,
      removed,
      afterLoad: async (sql, people) => {
        gone = await removeAgain(sql, people);
        await recordChange(sql, now, { personId: null, role: 'command', what: 'restores a backup', about: { removedAgain: gone } });
      },
      progress: io.err,
    });
    return { restored, gone };
  } finally {
    await place.stop();
  }
}

/** Whoever was removed after the backup was taken, and is in it, goes again; and all are on the database's own list. @returns how many went */
async function removeAgain(sql: pg.ClientBase, people: readonly Removed[]): Promise<number> {
  const marks = people.map(({ mark }) => mark);
  const { rows } = await sql.query<{ id: number }>(
    `SELECT id FROM person WHERE mark = ANY ($1::uuid[]) OR mark IN (SELECT mark FROM removed_person) ORDER BY id`,
    [marks],
  );
  for (const { id } of rows) await removePersonRows(sql, id);
  for (const { mark, day, why } of people)
    await sql.query('INSERT INTO removed_person (mark, removed_at, why) VALUES ($1, $2, $3) ON CONFLICT DO NOTHING', [
      mark,
      new Date(`${day}T00:00:00Z`),
      why ?? 'staff',
    ]);
  return rows.length;
}
