import type { PoolClient } from 'pg';
import { requirePermission, type Person } from '../accounts/index.js';
import { RungwiseError } from '../core/errors.js';
import { anywhere } from '../core/words.js';
import type { Clock } from '../platform/clock.js';
import { inTransaction, type Db } from '../platform/db.js';
import { removePersonRows } from './remove-person.js';
import * as store from './removal-store.js';

/** Removing people: oneself, or somebody else by an administrator. */

/** The file beside the backups that says who was removed: it outlives the database, so that an older backup cannot bring anybody back. */
export interface RemovedList {
  /** Marks that stand in it. */
  marks(): Promise<ReadonlySet<string>>;
  /** @param day 2026-11-26 */
  add(mark: string, day: string): Promise<void>;
}

export interface RemovalNeeds {
  db: Db;
  clock: Clock;
  /** Null where there is no folder for backups. */
  removedList: RemovedList | null;
  /** Gets what went wrong where the removal itself was done. */
  log: (error: unknown) => void;
}

export type Why = 'self' | 'staff' | 'time';
export type RemovalService = ReturnType<typeof removalService>;

/** People found by name on one page. */
const mostFound = 50;

export function removalService({ db, clock, removedList, log }: RemovalNeeds) {
  /** Brings the file up to what the database says. @returns how many marks were added */
  async function listRemoved(): Promise<number> {
    if (removedList === null) return 0;
    const there = await removedList.marks();
    const missing = (await store.allMarks(db)).filter(({ mark }) => !there.has(mark));
    for (const { mark, day } of missing) await removedList.add(mark, day);
    return missing.length;
  }

  /** The removal stands whatever becomes of the file: a job brings the file up again. */
  const listSoon = async (): Promise<void> => void (await listRemoved().catch(log));

  /** @param fits looks again, now that nobody can change it @returns whether somebody was removed */
  async function remove(personId: number, why: Why, fits: (sql: PoolClient) => Promise<boolean> = async () => true): Promise<boolean> {
    const removed = await inTransaction(db, async (sql) => {
      if (!(await fits(sql))) return false;
      const person = await removePersonRows(sql, personId);
      if (person !== null) await store.addMark(sql, person.mark, why, clock.now());
      return person !== null;
    });
    if (removed) await listSoon();
    return removed;
  }

  async function removeOneself(person: Person): Promise<void> {
    requirePermission(person, 'remove-oneself');
    await remove(person.id, 'self');
  }

  /** @throws RungwiseError `not-found` for oneself too: whoever runs the server is removed by another administrator */
  async function look(person: Person, personId: number): Promise<store.FoundPerson> {
    requirePermission(person, 'remove-people');
    const found = personId === person.id ? null : await store.findPerson(db, personId);
    if (found === null) throw new RungwiseError('not-found');
    return found;
  }

  /** Two administrators who remove one another at once are taken in turn, and the second finds itself gone. */
  async function removeOther(person: Person, personId: number): Promise<void> {
    await look(person, personId);
    await remove(personId, 'staff', async (sql) => {
      const administrators = await store.holdAdministrators(sql);
      if (!administrators.some(({ id, open }) => id === person.id && open)) throw new RungwiseError('not-allowed');
      return true;
    });
  }

  /** @param text part of a name; an empty one finds everybody, as far as a page can hold them */
  async function find(person: Person, text: string): Promise<{ people: store.FoundPerson[]; more: boolean; now: Date }> {
    requirePermission(person, 'remove-people');
    const people = await store.findPeople(db, anywhere(text), mostFound + 1);
    const others = people.slice(0, mostFound).filter(({ id }) => id !== person.id);
    return { people: others, more: people.length > mostFound, now: clock.now() };
  }

  return { remove, removeOneself, removeOther, look, find, listRemoved };
}
