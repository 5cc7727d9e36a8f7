import { recordChange } from '../audit/index.js';
import { requirePermission, type Person } from '../accounts/index.js';
import { keepLonger } from '../classes/index.js';
import { isoDay } from '../core/calendar.js';
import { decide, monthsBefore, noticeDays, type KeptPerson } from '../core/retention.js';
import { counted } from '../core/words.js';
import { oldGuestSheets, takeNamesOff } from '../papers/index.js';
import type { Clock } from '../platform/clock.js';
import type { Db } from '../platform/db.js';
import { keepingRules } from './held-store.js';
import type { RemovalService } from './removal-service.js';
import * as store from './retention-store.js';

/** How long people are kept: what the club has set, who will go, and the night job that does it. */

export interface RetentionNeeds {
  db: Db;
  clock: Clock;
  removal: Pick<RemovalService, 'remove' | 'listRemoved'>;
}

export interface KeepingView {
  now: Date;
  months: number;
  contact: string;
  leaving: store.LeavingRow[];
  /** Names on printed sheets that are taken off within the fortnight. */
  guests: number;
  kept: { name: string; until: string }[];
}

export interface RetentionReport {
  noticed: number;
  removed: number;
  note: string;
}

export type RetentionService = ReturnType<typeof retentionService>;

const dayMs = 86_400_000;
const keptPerson = ({ given, removeOn, ...row }: store.KeptRow): KeptPerson => ({
  ...row,
  notice: given === null || removeOn === null ? null : { given, removeOn },
});

export function retentionService({ db, clock, removal }: RetentionNeeds) {
  const today = (): number => Math.floor(clock.now().getTime() / dayMs);
  const monthsAgo = (day: number, months: number): Date => new Date(monthsBefore(day, months) * dayMs);

  async function view(person: Person): Promise<KeepingView> {
    requirePermission(person, 'upkeep');
    const { months, contact } = await keepingRules(db);
    return {
      now: clock.now(),
      months,
      contact,
      leaving: await store.leaving(db),
      guests: (await oldGuestSheets(db.pool, monthsAgo(today() + noticeDays, months))).length,
      kept: await store.keptLonger(db, isoDay(today())),
    };
  }

  async function save(person: Person, { months, contact }: { months: number; contact: string }): Promise<void> {
    requirePermission(person, 'upkeep');
    await store.saveRules(db, months, contact);
  }

  /** A year more for somebody, whatever class they are in. */
  async function keep(person: Person, personId: number): Promise<void> {
    requirePermission(person, 'upkeep');
    await keepLonger(db, personId, clock.now());
  }

  /** Looks again while nobody can change it: somebody may have come back since. */
  const remove = (personId: number, day: number, months: number): Promise<boolean> =>
    removal.remove(personId, 'time', async (sql) => {
      const row = await store.holdKept(sql, personId);
      if (row === null || decide(keptPerson(row), day, months) !== 'remove') return false;
      await recordChange(sql, clock.now(), {
        personId: null,
        role: 'job',
        what: 'removes somebody after the time that was set',
        about: { person: personId },
      });
      return true;
    });

  /** The night's work. Done twice in one night it does nothing more; cut off, it goes on the next time. */
  async function run(): Promise<RetentionReport> {
    const day = today();
    const { months } = await keepingRules(db);
    const rows = await store.away(db, monthsAgo(day, months));
    const groups = { nothing: [] as number[], notice: [] as number[], 'forget-notice': [] as number[], remove: [] as number[] };
    for (const row of rows) groups[decide(keptPerson(row), day, months)].push(row.id);
    await store.forgetNotices(db, groups['forget-notice']);
    await store.giveNotice(db, groups.notice, clock.now(), isoDay(day + noticeDays));
    let removed = 0;
    for (const id of groups.remove) if (await remove(id, day, months)) removed += 1;
    const names = await takeNamesOff(db.pool, await oldGuestSheets(db.pool, monthsAgo(day, months)));
    await removal.listRemoved();
    const note = `${counted(groups.notice.length, 'notice')} given, ${groups['forget-notice'].length} taken back, ${counted(removed, 'candidate')} removed, ${counted(names, 'name')} taken off printed sheets`;
    return { noticed: groups.notice.length, removed, note };
  }

  return { view, save, keep, run };
}
