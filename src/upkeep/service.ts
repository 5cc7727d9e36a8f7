import { changesList, recordChange, type ChangesList } from '../audit/index.js';
import { requirePermission, type Person } from '../accounts/index.js';
import { RungwiseError } from '../core/errors.js';
import { warningsOf, type Warning } from '../core/upkeep.js';
import type { Clock } from '../platform/clock.js';
import type { Db } from '../platform/db.js';
import type { BackupFile } from '../platform/backup/kept-folder.js';
import { backupNote, type ServerPlace } from './place.js';
import { addBackupRun, anyRemoved, counts, databaseFacts, lastRuns, type Counts, type DatabaseFacts, type LastRun } from './store.js';

export interface UpkeepNeeds {
  db: Db;
  clock: Clock;
  place: ServerPlace;
}

export interface UpkeepState {
  now: Date;
  place: ServerPlace;
  database: DatabaseFacts;
  counts: Counts;
  runs: LastRun[];
  backups: BackupFile[];
  disk: { free: number; whole: number } | null;
  /** Null when it cannot be told. */
  sameDisk: boolean | null;
  lastBackup: Date | null;
  warnings: Warning[];
  anyRemoved: boolean;
}

export type UpkeepService = ReturnType<typeof upkeepService>;

/** How the server is doing, for administrators. */
export function upkeepService({ db, clock, place }: UpkeepNeeds) {
  async function look(): Promise<Pick<UpkeepState, 'now' | 'database' | 'runs' | 'disk' | 'sameDisk' | 'lastBackup' | 'warnings'>> {
    const now = clock.now();
    const [database, runs] = [await databaseFacts(db), await lastRuns(db)];
    const [disk, sameDisk] = await Promise.all([place.backups.disk(), place.backups.sameDisk()]);
    const lastBackup = runs.find(({ job }) => job === 'backup')?.doneAt ?? null;
    const failed = runs.filter(({ outcome }) => outcome === 'failed').map(({ job, note }) => ({ job, note }));
    const warnings = warningsOf({ now, since: database.since, lastBackup, disk, failed });
    return { now, database, runs, disk, sameDisk, lastBackup, warnings };
  }

  async function state(person: Person): Promise<UpkeepState> {
    requirePermission(person, 'upkeep');
    const seen = await look();
    return { ...seen, place, counts: await counts(db, seen.now), backups: await place.backups.list(), anyRemoved: await anyRemoved(db) };
  }

  /** For an administrator's first page. */
  async function warnings(person: Person): Promise<Warning[]> {
    requirePermission(person, 'upkeep');
    return (await look()).warnings;
  }

  /** Takes a backup now. @throws SetUpError with what to do when it cannot be written */
  async function takeBackup(person: Person): Promise<void> {
    requirePermission(person, 'upkeep');
    const started = clock.now();
    const note = backupNote(await place.backups.take());
    await addBackupRun(db, { started, finished: clock.now(), note });
  }

  async function openBackup(person: Person, name: string) {
    requirePermission(person, 'upkeep');
    const found = await place.backups.open(name);
    if (found === null) throw new RungwiseError('not-found');
    await recordChange(db.pool, clock.now(), {
      personId: person.id,
      role: 'administrator',
      what: 'downloads a backup',
      about: { file: name },
    });
    return found;
  }

  async function listChanges(person: Person, before?: number): Promise<ChangesList> {
    requirePermission(person, 'upkeep');
    return await changesList(db, before);
  }

  return { state, warnings, takeBackup, openBackup, changes: listChanges };
}
