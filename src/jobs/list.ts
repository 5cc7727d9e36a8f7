import type { Job } from './index.js';
import type { Clock } from '../platform/clock.js';
import type { Db } from '../platform/db.js';
import { tidyAccounts } from '../accounts/index.js';
import { backupNote, type ServerPlace } from '../upkeep/index.js';
import { forgetRuns } from './store.js';

/** The jobs there are. */

export interface JobWork {
  db: Db;
  clock: Clock;
  place: ServerPlace;
  /** Hands in papers whose time has run out and ends forgotten evenings. @returns how many */
  closeOverdue: () => Promise<number>;
  /** Tells who will be removed for want of visits, and removes those whose notice is up. */
  retention: () => Promise<{ note: string }>;
  /** Writes down beside the backups who was removed, where that could not be done at the time. */
  noteRemoved: () => Promise<unknown>;
}

export function jobList({ db, clock, place, closeOverdue, retention, noteRemoved }: JobWork): Job[] {
  return [
    {
      name: 'close-overdue',
      every: { seconds: 20 },
      run: async () => `${await closeOverdue()} closed`,
      failedNote: 'It is tried again by itself. Whoever looks at such a paper hands it in too.',
    },
    {
      name: 'tidy',
      every: { seconds: 3600 },
      run: async () => {
        await forgetRuns(db, clock.now());
        await noteRemoved();
        const { sessions, guesses } = await tidyAccounts(db, clock.now());
        return `${sessions} sessions, ${guesses} counters`;
      },
      failedNote: 'It is tried again by itself. If it fails for a day, look in the log.',
    },
    {
      name: 'backup',
      every: { dailyAt: '03:10' },
      run: async () => backupNote(await place.backups.take()),
      failedNote: 'Make room on the disk with the backups, see that the folder can be written to, and take one by hand.',
    },
    {
      name: 'retention',
      every: { dailyAt: '04:10' },
      run: async () => (await retention()).note,
      failedNote: 'Nobody was removed. It is tried again within the hour; if it fails again, look in the log.',
    },
  ];
}
